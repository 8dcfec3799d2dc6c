#include "exporters/drawing/curvature_comb.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/one_two_five.hpp"
#include "exporters/drawing/pens.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kStep = 2.5;         // between teeth, on paper
constexpr double kMostTeeth = 500;    // about
constexpr double kStillSeen = 4;      // a comb is not made smaller than this for the curve's sake
constexpr double kOffTheCurve = 0.5;  // where a tooth no longer touches the curve it stands on

double sharpest(const Profile& profile) {
  double most = 0;
  for (const Run& run : profile.runs()) most = std::max(most, std::abs(run.curvature));
  return most;
}

double sense(double curvature) { return curvature < 0 ? -1 : 1; }

Segment tooth(const CurvatureComb& comb, const Pose& pose, double curvature, const View& view) {
  const Vec2 foot = view.paper(pose.point);
  return line(foot, foot + sense(curvature) * comb.length(curvature) * pose.normal());
}

// At a joint of two bends on one side the longer tooth stands for both.
bool owned(const Profile& profile, std::size_t i, std::size_t neighbour) {
  const double own = profile.runs()[i].curvature, other = profile.runs()[neighbour].curvature;
  return own * other <= 0 || std::abs(own) > std::abs(other);
}

void add_bend(CurvatureComb& comb, const Profile& profile, std::size_t i, const View& view, double step) {
  const Run& run = profile.runs()[i];
  const double length = comb.length(run.curvature);
  const int parts = std::max(1, static_cast<int>(std::ceil(run.length * view.scale / step)));
  for (int part = 0; part <= parts; ++part) {
    if (part == 0 && i > 0 && !owned(profile, i, i - 1)) continue;
    if (part == parts && i + 1 < profile.runs().size() && !owned(profile, i, i + 1)) continue;
    const double s = run.length * part / parts;
    comb.teeth.push_back(tooth(comb, walked(profile.pose(i), run.curvature, s), run.curvature, view));
  }
  const Vec2 from = tooth(comb, profile.pose(i), run.curvature, view).to;
  const Vec2 to = tooth(comb, profile.pose(i + 1), run.curvature, view).to;
  const Vec2 centre = view.paper(Vec2(profile.pose(i).point - profile.pose(i).normal() / run.curvature));
  comb.crests.push_back({from, to, -run.turn(), centre, view.scale / std::abs(run.curvature) + length});
}

CurvatureComb comb_of(const Profile& profile, const View& view, double radius) {
  CurvatureComb comb{radius, {}, {}};
  const double step = std::max(kStep, profile.girth() * view.scale / kMostTeeth);
  for (std::size_t i = 0; i < profile.runs().size(); ++i)
    if (!profile.runs()[i].straight()) add_bend(comb, profile, i, view, step);
  return comb;
}

bool crosses(const CurvatureComb& comb, const std::vector<Segment>& curve) {
  const auto met = [&](const Segment& whole) {
    const double length = whole.length();
    if (length <= kOffTheCurve) return false;
    const Segment free = line(whole.point(kOffTheCurve / length), whole.to);
    const Box2 box = lamwright::box(free);
    return std::any_of(curve.begin(), curve.end(), [&](const Segment& s) {
      return overlap(lamwright::box(s), box) && !crossings(s, free).empty();
    });
  };
  return std::any_of(comb.teeth.begin(), comb.teeth.end(), met);
}

}  // namespace

Box2 CurvatureComb::box() const {
  Box2 all;
  for (const auto* strokes : {&teeth, &crests})
    for (const Segment& s : *strokes) all.add(lamwright::box(s));
  return all;
}

CurvatureComb curvature_comb(const Profile& profile, const View& view) {
  const double most = sharpest(profile);
  if (most <= 0) return {};
  const auto curve = view.paper(segments(profile));
  double radius = one_two_five_below(kLongestTooth / kCombSample / most);
  CurvatureComb comb = comb_of(profile, view, radius);
  while (crosses(comb, curve)) {
    radius = one_two_five_below(0.9 * radius);
    CurvatureComb smaller = comb_of(profile, view, radius);
    if (smaller.length(most) < kStillSeen) break;
    comb = std::move(smaller);
  }
  return comb;
}

void add_comb(Drawing& drawing, const CurvatureComb& comb) {
  for (const Segment& s : comb.teeth)
    if (s.length() > kSamePoint) drawing.add(pens::kBlock, s);
  for (const Segment& s : comb.crests) drawing.add(pens::kBlock, s);
}

}  // namespace lamwright::drawing
