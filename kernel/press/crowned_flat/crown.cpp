#include "kernel/press/crowned_flat/crown.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::crowned_flat {
namespace {

// A run that keeps to the beam's direction at both its ends: between x = from and to, bent by sense.
Run run_between(const EvenBeam& beam, double from, double to, int sense) {
  const double left = -sense * std::atan(beam.slope(from)), right = -sense * std::atan(beam.slope(to));
  const double turn = left - right;  // a heading falls along a crown
  if (std::abs(turn) < kTangent * kTangent) return {(to - from) / std::cos(left), 0};
  const double length = (to - from) * turn / (std::sin(left) - std::sin(right));
  return {length, turn / length};
}

std::vector<Run> runs_to(const EvenBeam& beam, double end, int sense, int count) {
  std::vector<Run> runs;
  for (int i = 0; i < count; ++i)
    runs.push_back(run_between(beam, end * (2.0 * i / count - 1), end * (2.0 * (i + 1) / count - 1), sense));
  return runs;
}

double length_of(const std::vector<Run>& runs) {
  double sum = 0;
  for (const Run& run : runs) sum += run.length;
  return sum;
}

// The x at which the bent line ends so that it is as long as the straight one.
double end_of(const EvenBeam& beam, double length, int count) {
  double low = 0, high = length / 2;
  for (int step = 0; step < 60; ++step) {
    const double middle = (low + high) / 2;
    (length_of(runs_to(beam, middle, 1, count)) < length ? low : high) = middle;
  }
  return (low + high) / 2;
}

Profile pieces(const Profile& straight, const EvenBeam& beam, int sense, int count) {
  const double length = straight.girth(), end = end_of(beam, length, count);
  const Pose middle = straight.at(length / 2);
  const Profile bent({{0, 0}, middle.heading - sense * std::atan(beam.slope(-end))},
                     runs_to(beam, end, sense, count));
  // Laid back so that its middle keeps its place.
  return bent.posed({middle.point - bent.point(bent.girth() / 2), bent.start().heading});
}

double farthest(const Profile& bent, const Profile& straight, const EvenBeam& beam) {
  const Pose middle = straight.at(straight.girth() / 2);
  double most = 0;
  const auto take = [&](double station) {
    const Vec2 off = bent.point(station) - middle.point;
    const double along = off.dot(middle.tangent()), away = std::abs(off.dot(middle.normal()));
    most = std::max(most, std::abs(away - beam.sag(std::min(std::abs(along), beam.half_span))));
  };
  for (std::size_t i = 0; i < bent.runs().size(); ++i) {
    take(bent.station(i));
    take((bent.station(i) + bent.station(i + 1)) / 2);
  }
  take(bent.girth());
  return most;
}

}  // namespace

Profile crowned(const Profile& straight, const EvenBeam& beam, int sense) {
  constexpr int kMostPieces = 512;
  for (int count = 8; count <= kMostPieces; count *= 2)
    if (Profile bent = pieces(straight, beam, sense, count);
        farthest(bent, straight, beam) <= kCrownTolerance / 2)
      return bent;
  ensure(false, "a crown is met within its tolerance by 512 arcs");
  return straight;
}

}  // namespace lamwright::crowned_flat
