#include "exporters/drawing/level_curve.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

// What a sheet would give as 0 is no direction to level by.
double chord_of(const Profile& profile) {
  constexpr double kTold = 0.05;
  const double size = chord(profile);
  return size < kTold ? 0 : size;
}

// Where a bend runs parallel to the chord.
void add_level(std::vector<double>& stations, const Profile& level, std::size_t i) {
  const double heading = level.pose(i).heading, curvature = level.runs()[i].curvature;
  const auto [low, high] = std::minmax(heading, level.pose(i + 1).heading);
  for (double half = std::ceil(low / kPi); half * kPi < high; ++half)
    stations.push_back(level.station(i) + (heading - half * kPi) / curvature);
}

// Middles first, so that a stretch along which nothing rises is met there.
std::vector<double> candidates(const Profile& level) {
  std::vector<double> out;
  for (std::size_t i = 0; i < level.runs().size(); ++i)
    if (level.runs()[i].straight()) out.push_back((level.station(i) + level.station(i + 1)) / 2);
  for (std::size_t i = 0; i < level.runs().size(); ++i) {
    out.push_back(level.station(i));
    if (!level.runs()[i].straight()) add_level(out, level, i);
  }
  return out;
}

double summit_of(const Profile& level) {
  double best = level.girth() / 2, height = 0;
  for (const double s : candidates(level))
    if (std::abs(level.point(s).y()) > height + kSamePoint) {
      best = s;
      height = std::abs(level.point(s).y());
    }
  return best;
}

}  // namespace

LevelCurve::LevelCurve(const Profile& profile)
    : from_(profile.start()),
      chord_(chord_of(profile)),
      level_(open() ? levelled(profile) : profile.posed({{0, 0}, 0})),
      summit_(summit_of(level_)) {}

Vec2 LevelCurve::placed(const Vec2& point) const {
  const Vec2 beside = point - from_.point, along = from_.tangent();
  const Pose to = level_.start();
  return to.point + beside.dot(along) * to.tangent() + cross(along, beside) * to.normal();
}

double LevelCurve::rise() const { return level_.point(summit_).y(); }

}  // namespace lamwright::drawing
