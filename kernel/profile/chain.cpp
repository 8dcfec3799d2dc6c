#include "kernel/profile/chain.hpp"

#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

// Angle from the end of a to the start of b, anticlockwise positive.
double kink(const Segment& a, const Segment& b) {
  const Vec2 u = a.tangent(1), v = b.tangent(0);
  return std::atan2(cross(u, v), u.dot(v));
}

Run run_of(const Segment& s) {
  return s.straight() ? Run{s.length(), 0} : Run{s.length(), (s.turn < 0 ? 1 : -1) / s.radius};
}

void check_gap(const Segment& a, const Segment& b, double join) {
  const double gap = (b.from - a.to).norm();
  if (gap > join + kWholeNumber)
    throw geometry_error("joint at " + point_text(a.to),
                         "the pieces are " + number(gap) + " apart; at most " + number(join) + " is joined",
                         "close the gap or raise join");
}

[[noreturn]] void refuse_kink(const Segment& a, double angle) {
  throw geometry_error("joint at " + point_text(a.to),
                       "not tangent: the curve turns by " + number(std::abs(degrees(angle)), 2) +
                           " degrees there, and a lamination cannot have a kink",
                       "draw it tangent, or give ease = R to round it");
}

// The bend that replaces a kink between two lines; shortens both by R tan(angle / 2).
Run eased(Run& before, Run& after, double angle, double radius, const Segment& a) {
  const double taken = radius * std::tan(std::abs(angle) / 2);
  if (!before.straight() || !after.straight() || taken >= before.length || taken >= after.length)
    throw geometry_error("joint at " + point_text(a.to),
                         "ease = " + number(radius) + " takes " + number(taken) +
                             " from both lines beside the kink and they are not that long",
                         "give a smaller ease");
  before.length -= taken;
  after.length -= taken;
  return {radius * std::abs(angle), (angle < 0 ? 1 : -1) / radius};
}

}  // namespace

Profile profile_from(const ChainSpec& chain) {
  if (chain.segments.empty())
    throw geometry_error("profile", "has no segments", "give at least one line or arc");
  std::vector<Run> runs{run_of(chain.segments.front())};
  for (std::size_t i = 1; i < chain.segments.size(); ++i) {
    const Segment& a = chain.segments[i - 1];
    const Segment& b = chain.segments[i];
    check_gap(a, b, chain.join);
    const double angle = kink(a, b);
    Run next = run_of(b);
    if (std::abs(angle) > kTangent) {
      if (chain.ease <= 0) refuse_kink(a, angle);
      const Run bend = eased(runs.back(), next, angle, chain.ease, a);
      runs.push_back(bend);
    }
    runs.push_back(next);
  }
  const Segment& first = chain.segments.front();
  const Vec2 u = first.tangent(0);
  return {{first.from, std::atan2(u.y(), u.x())}, std::move(runs)};
}

}  // namespace lamwright
