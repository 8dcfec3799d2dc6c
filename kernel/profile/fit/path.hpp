// A tangent chain while it is being fitted: like a profile, but without checks and carried on past its ends.
#pragma once
#include <cmath>
#include <vector>

#include "kernel/profile/profile.hpp"

namespace lamwright::fitting {

// The start pose slides along the first run as the fit goes on; the length of the last run only says where
// it is cut in the end, its curve is carried on.
struct Path {
  Pose start;
  std::vector<Run> runs;
};

// A point, or the mean of several neighbours that counts as many times.
struct Sample {
  Vec2 at{0, 0};
  double weight = 1;
};

// Where each run begins, and the end of the last.
std::vector<Pose> joints(const Path& path);

// A point as seen from the pose where a run begins: `ahead` along the tangent, `left` along the normal.
struct Seen {
  double ahead;
  double left;
};
inline Seen seen_from(const Pose& pose, const Vec2& tangent, const Vec2& point) {
  const Vec2 d = point - pose.point;
  return {d.dot(tangent), cross(tangent, d)};
}

// Station at which a point seen from a run's start is square to the run, which is carried on both ways; the
// one nearest to the middle of the run.
double station_on(const Seen& point, const Run& run);

// Signed distance to a run carried on, positive on the left of travel.
inline double distance_to(const Seen& point, double curvature) {
  const double across = 1 + curvature * point.left, along = curvature * point.ahead;
  const double square = point.ahead * point.ahead + point.left * point.left;
  return (2 * point.left + curvature * square) / (1 + std::sqrt(across * across + along * along));
}

// Walks along a path with points that come in order and tells the run abreast of which each lies. Holds on to
// the path.
class Follower {
 public:
  explicit Follower(const Path& path);
  std::size_t run_of(const Vec2& point);  // at most a few runs from that of the point before
  Seen seen(const Vec2& point) const { return seen_from(joints_[run_], tangents_[run_], point); }

 private:
  bool before(const Vec2& point) const;  // lies before the current run
  bool beyond(const Vec2& point) const;  // lies beyond the current run

  const std::vector<Run>& runs_;
  std::vector<Pose> joints_;
  std::vector<Vec2> tangents_;
  std::size_t run_ = 0;
};

// Signed distance of each point, which come in order.
std::vector<double> distances(const Path& path, const std::vector<Vec2>& points);

}  // namespace lamwright::fitting
