#include "kernel/profile/offset.hpp"

#include <cmath>

#include "kernel/profile/segment.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

[[noreturn]] void refuse_collapse(const Profile& profile, std::size_t i, double d, const std::string& what) {
  const double radius = 1 / std::abs(profile.runs()[i].curvature);
  throw geometry_error(run_name(profile, i) + " (radius " + number(radius) + ")",
                       "the " + what + " lies " + number(std::abs(d)) + " inside it and collapses",
                       "thickest stack that fits is " + number(tenth_below(radius)) +
                           ", or raise the radius to " + number(tenth_above(std::abs(d))));
}

double station_on(const Profile& profile, std::size_t run, const Vec2& p) {
  return profile.station(run) + Profile(profile.pose(run), {profile.runs()[run]}).nearest(p).station;
}

}  // namespace

Profile offset(const Profile& profile, double d, const std::string& what) {
  std::vector<Run> runs;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    const Run& run = profile.runs()[i];
    const double scale = 1 + run.curvature * d;
    if (scale <= 0 || run.length * scale < kSamePoint) refuse_collapse(profile, i, d, what);
    runs.push_back({run.length * scale, run.curvature / scale});
  }
  return {{profile.start().point + d * profile.start().normal(), profile.start().heading}, std::move(runs)};
}

double offset_station(const Profile& profile, double s, double d) {
  double station = 0;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    const Run& run = profile.runs()[i];
    const bool last = i + 1 == profile.runs().size();
    if (s <= profile.station(i + 1) || last)
      return station + (s - profile.station(i)) * (1 + run.curvature * d);
    station += run.length * (1 + run.curvature * d);
  }
  return station;
}

Profile compensated(const Profile& profile, double r) {
  ensure(r < 1, "the share lost by springback is below 1");
  std::vector<Run> runs = profile.runs();
  for (Run& run : runs) run.curvature /= 1 - r;
  return {profile.start(), std::move(runs)};
}

Profile extended(const Profile& profile, double left, double right) {
  std::vector<Run> runs = profile.runs();
  const Pose start{profile.start().point - left * profile.start().tangent(), profile.start().heading};
  if (left > 0) runs.insert(runs.begin(), {left, 0});
  if (right > 0) runs.push_back({right, 0});
  return {start, std::move(runs)};
}

double chord(const Profile& profile) { return (profile.end().point - profile.start().point).norm(); }

Profile between(const Profile& profile, double from, double to) {
  ensure(from < to, "a stretch of a profile has a length");
  std::vector<Run> runs;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    const double a = std::max(from, profile.station(i)), b = std::min(to, profile.station(i + 1));
    if (b - a > kSamePoint) runs.push_back({b - a, profile.runs()[i].curvature});
  }
  return {profile.at(from), std::move(runs)};
}

Profile levelled(const Profile& profile) {
  const Vec2 span = profile.end().point - profile.start().point;
  if (span.norm() < kSamePoint)
    throw geometry_error("profile", "its two ends meet, so it has no chord", "open the curve");
  const double heading = std::remainder(profile.start().heading - std::atan2(span.y(), span.x()), 2 * kPi);
  return profile.posed({{-span.norm() / 2, 0}, heading});
}

void refuse_crossing(const Profile& profile, const std::string& what) {
  std::vector<Segment> segments;
  for (std::size_t i = 0; i < profile.runs().size(); ++i)
    segments.push_back(segment(profile.pose(i), profile.runs()[i]));
  // Neighbours touch at their joint and, being tangent there, nowhere else: circles tangent to each other or
  // to a line share one point only.
  for (std::size_t i = 0; i < segments.size(); ++i)
    for (std::size_t j = i + 2; j < segments.size(); ++j)
      for (const Vec2& p : crossings(segments[i], segments[j]))
        throw geometry_error(what,
                             run_name(profile, i) + " and " + run_name(profile, j) + " cross at (" +
                                 number(p.x()) + ", " + number(p.y()) + "), stations " +
                                 number(station_on(profile, i, p)) + " and " +
                                 number(station_on(profile, j, p)),
                             "open the curve or make it thinner");
}

}  // namespace lamwright
