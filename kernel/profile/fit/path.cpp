#include "kernel/profile/fit/path.hpp"

#include <cmath>

#include "shared/units.hpp"

namespace lamwright::fitting {
namespace {

// Up to this turn (radians) the normals at its ends tell a point abreast of a run from those that are not;
// beyond, the far end sees the near points ahead of it.
constexpr double kShortTurn = 2;

}  // namespace

std::vector<Pose> joints(const Path& path) {
  std::vector<Pose> out{path.start};
  for (const Run& run : path.runs) out.push_back(walked(out.back(), run.curvature, run.length));
  return out;
}

double station_on(const Seen& point, const Run& run) {
  const double k = run.curvature;
  if (std::abs(k * run.length) < 1e-9 && std::abs(k * point.ahead) < 1e-9) return point.ahead;
  const double s = std::atan2(k * point.ahead, 1 + k * point.left) / k;
  const double round = 2 * kPi / std::abs(k);
  return s < run.length / 2 - round / 2 ? s + round : s;
}

Follower::Follower(const Path& path) : runs_(path.runs), joints_(joints(path)) {
  for (const Pose& joint : joints_) tangents_.push_back(joint.tangent());
}

bool Follower::before(const Vec2& point) const {
  if (std::abs(runs_[run_].turn()) < kShortTurn)
    return (point - joints_[run_].point).dot(tangents_[run_]) < 0;
  return station_on(seen(point), runs_[run_]) < 0;
}

bool Follower::beyond(const Vec2& point) const {
  if (std::abs(runs_[run_].turn()) < kShortTurn)
    return (point - joints_[run_ + 1].point).dot(tangents_[run_ + 1]) > 0;
  return station_on(seen(point), runs_[run_]) > runs_[run_].length;
}

std::size_t Follower::run_of(const Vec2& point) {
  const std::size_t from = run_;
  while (run_ + 1 < runs_.size() && beyond(point)) ++run_;
  if (run_ > from) return run_;
  while (run_ > 0 && before(point)) --run_;
  return run_;
}

std::vector<double> distances(const Path& path, const std::vector<Vec2>& points) {
  Follower follower(path);
  std::vector<double> out;
  out.reserve(points.size());
  for (const Vec2& point : points) {
    const std::size_t run = follower.run_of(point);
    out.push_back(distance_to(follower.seen(point), path.runs[run].curvature));
  }
  return out;
}

}  // namespace lamwright::fitting
