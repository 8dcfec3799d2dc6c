#include "kernel/profile/profile.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/sinc.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

void check_run(const Run& run, std::size_t i) {
  const std::string where = "run " + std::to_string(i + 1);
  if (!std::isfinite(run.length) || !std::isfinite(run.curvature))
    throw geometry_error(where, "length or curvature is not a number");
  if (run.length <= 0)
    throw geometry_error(where, "length " + number(run.length) + " is not positive", "leave the run out");
  if (std::abs(run.turn()) >= 2 * kPi)
    throw geometry_error(
        where,
        "turns through " + number(std::abs(degrees(run.turn())), 1) + " degrees, a full circle or more",
        "bends add up to less than 360 degrees");
}

std::vector<Run> merged(std::vector<Run> runs) {
  std::vector<Run> out;
  for (const Run& run : runs) {
    if (!out.empty() && std::abs(out.back().curvature - run.curvature) < kSameCurvature)
      out.back().length += run.length;
    else
      out.push_back(run);
  }
  return out;
}

// Station of the point of a run nearest to `to`: closed form for lines and arcs.
double nearest_on_run(const Pose& from, const Run& run, const Vec2& to) {
  if (run.straight()) return std::clamp((to - from.point).dot(from.tangent()), 0.0, run.length);
  const Vec2 centre = from.point - from.normal() / run.curvature;
  const Vec2 a = from.point - centre;
  const Vec2 b = to - centre;
  if (b.norm() < kSamePoint) return 0;
  double turned = std::atan2(-cross(a, b), a.dot(b));  // clockwise positive, as for a crown
  if (run.curvature < 0) turned = -turned;
  const double sweep = std::abs(run.turn());
  if (turned < 0) turned += 2 * kPi;
  if (turned <= sweep) return turned / std::abs(run.curvature);
  return turned - sweep < 2 * kPi - turned ? run.length : 0;
}

}  // namespace

Pose walked(const Pose& from, double curvature, double s) {
  const double half = curvature * s / 2;
  return {from.point + s * sinc(half) * direction(from.heading - half), from.heading - 2 * half};
}

Profile::Profile(Pose start, std::vector<Run> runs) {
  if (runs.empty()) throw geometry_error("profile", "has no runs", "give at least one line or bend");
  for (std::size_t i = 0; i < runs.size(); ++i) check_run(runs[i], i);
  runs_ = merged(std::move(runs));
  for (std::size_t i = 0; i < runs_.size(); ++i) check_run(runs_[i], i);
  poses_.push_back(start);
  stations_.push_back(0);
  for (const Run& run : runs_) {
    poses_.push_back(walked(poses_.back(), run.curvature, run.length));
    stations_.push_back(stations_.back() + run.length);
  }
}

double Profile::turn() const {
  double sum = 0;
  for (const Run& run : runs_) sum += run.turn();
  return sum;
}

std::size_t Profile::run_at(double s) const {
  const auto after = std::upper_bound(stations_.begin(), stations_.end(), s);
  const auto i = after == stations_.begin() ? 0 : after - stations_.begin() - 1;
  return std::min<std::size_t>(i, runs_.size() - 1);
}

Pose Profile::at(double s) const {
  const std::size_t i = run_at(s);
  return walked(poses_[i], runs_[i].curvature, std::clamp(s, 0.0, girth()) - stations_[i]);
}

std::vector<double> Profile::shape_changes() const { return {stations_.begin() + 1, stations_.end() - 1}; }

bool Profile::hollow() const {
  return std::any_of(runs_.begin(), runs_.end(), [](const Run& run) { return run.curvature < 0; });
}

bool Profile::straight() const {
  return std::all_of(runs_.begin(), runs_.end(), [](const Run& run) { return run.straight(); });
}

std::vector<double> Profile::inflections() const {
  std::vector<double> found;
  double bend_end = 0;
  double sense = 0;
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    const double k = runs_[i].curvature;
    if (k == 0) continue;
    if (sense * k < 0) found.push_back((bend_end + stations_[i]) / 2);
    sense = k;
    bend_end = stations_[i + 1];
  }
  return found;
}

Profile::Nearest Profile::nearest(const Vec2& to) const {
  Nearest best{0, INFINITY};
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    // No point of a run lies farther from its begin than its length; the rest is rounding.
    if ((poses_[i].point - to).norm() - runs_[i].length > best.distance + kSamePoint) continue;
    const double s = nearest_on_run(poses_[i], runs_[i], to);
    const double distance = (walked(poses_[i], runs_[i].curvature, s).point - to).norm();
    if (distance < best.distance) best = {stations_[i] + s, distance};
  }
  return best;
}

Box2 Profile::box() const {
  Box2 box;
  for (const Pose& pose : poses_) box.add(pose.point);
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    if (runs_[i].straight()) continue;
    // An arc reaches an extreme wherever its heading is a multiple of a quarter turn.
    const auto [low, high] = std::minmax(poses_[i].heading, poses_[i + 1].heading);
    for (double q = std::ceil(low / (kPi / 2)); q * kPi / 2 < high; ++q)
      box.add(walked(poses_[i], runs_[i].curvature, (poses_[i].heading - q * kPi / 2) / runs_[i].curvature)
                  .point);
  }
  return box;
}

Profile Profile::reversed() const {
  std::vector<Run> runs(runs_.rbegin(), runs_.rend());
  for (Run& run : runs) run.curvature = run.straight() ? 0 : -run.curvature;
  return {{end().point, end().heading + kPi}, std::move(runs)};
}

Profile Profile::mirrored() const {
  return {{{-end().point.x(), end().point.y()}, -end().heading}, {runs_.rbegin(), runs_.rend()}};
}

std::string run_name(const Profile& profile, std::size_t i) {
  const bool straight = profile.runs()[i].straight();
  const auto same = [&](const Run& run) { return run.straight() == straight; };
  const auto first = profile.runs().begin();
  return (straight ? "line " : "bend ") + std::to_string(1 + std::count_if(first, first + i, same));
}

std::string point_text(const Vec2& p) { return "(" + number(p.x()) + ", " + number(p.y()) + ")"; }

std::string run_text(const Run& run) {
  if (run.straight()) return "line " + number(run.length);
  return "bend " + number(degrees(run.turn())) + " deg R" + number(1 / std::abs(run.curvature));
}

}  // namespace lamwright
