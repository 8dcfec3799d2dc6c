#include "kernel/press/crowned_flat/crown.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright::crowned_flat {
namespace {

// The mean curvature of the beam between two places, from Simpson's rule: exact, for it is a parabola.
double mean_curvature(const EvenBeam& beam, double from, double to) {
  return (beam.curvature(from) + 4 * beam.curvature((from + to) / 2) + beam.curvature(to)) / 6;
}

Profile pieces(const Profile& straight, const EvenBeam& beam, int sense, int count) {
  const double length = straight.girth(), step = length / count;
  std::vector<Run> runs;
  for (int i = 0; i < count; ++i) {
    const double from = -length / 2 + i * step;
    runs.push_back({step, sense * mean_curvature(beam, from, from + step)});
  }
  const Profile bent(straight.start(), std::move(runs));
  // Laid back so that its middle keeps its place and direction.
  const Pose wanted = straight.at(length / 2), got = bent.at(length / 2);
  const double turn = wanted.heading - got.heading;
  const Vec2 back = bent.start().point - got.point;
  const double c = std::cos(turn), s = std::sin(turn);
  return bent.posed({wanted.point + Vec2(c * back.x() - s * back.y(), s * back.x() + c * back.y()),
                     bent.start().heading + turn});
}

double farthest(const Profile& bent, const Profile& straight, const EvenBeam& beam) {
  const Pose middle = straight.at(straight.girth() / 2);
  double most = 0;
  for (const double station : bent.shape_changes()) {
    const Vec2 off = bent.point(station) - middle.point;
    const double along = off.dot(middle.tangent()), away = std::abs(off.dot(middle.normal()));
    most = std::max(most, std::abs(away - beam.sag(std::min(std::abs(along), beam.half_span))));
  }
  return most;
}

}  // namespace

Profile crowned(const Profile& straight, const EvenBeam& beam, int sense) {
  int count = 8;
  Profile bent = pieces(straight, beam, sense, count);
  while (farthest(bent, straight, beam) > kCrownTolerance / 2 && count < 256)
    bent = pieces(straight, beam, sense, count *= 2);
  return bent;
}

}  // namespace lamwright::crowned_flat
