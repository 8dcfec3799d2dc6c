#include "exporters/drawing/pressure_diagram.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

const Seating& seating(const PressPlan& plan) { return plan.seated->seating; }

// Stations where the pressure can turn or break off, and between them `parts` to each stretch.
std::vector<double> divided(const PressPlan& plan, double step) {
  std::vector<double> joints;
  for (std::size_t i = 0; i <= plan.neutral.runs().size(); ++i) joints.push_back(plan.neutral.station(i));
  for (const Stretch& lifted : seating(plan).lifted()) joints.insert(joints.end(), {lifted.from, lifted.to});
  std::sort(joints.begin(), joints.end());
  std::vector<double> out{joints.front()};
  for (std::size_t i = 0; i + 1 < joints.size(); ++i) {
    const double from = joints[i], length = joints[i + 1] - from;
    if (length < kSamePoint) continue;
    const int parts = std::max(1, static_cast<int>(std::ceil(length / step)));
    for (int part = 1; part <= parts; ++part) out.push_back(from + length * part / parts);
  }
  return out;
}

// No ordinate reaches farther into a hollow than this share of its radius, where they would meet.
double rise_of(const PressPlan& plan, double scale) {
  constexpr double kIntoHollow = 0.8;
  const Seating& bed = seating(plan);
  if (bed.hold() != Hold::held || bed.greatest() <= 0) return 0;
  double rise = kHighestOrdinate / bed.greatest();
  for (const double station : divided(plan, plan.neutral.girth() / 500)) {
    const double curvature = plan.neutral.curvature(station);
    if (curvature >= 0) continue;
    const double room = -kIntoHollow * scale / curvature;
    rise = std::min(rise, room / std::max(bed.pressure(station), bed.mean()));
  }
  return rise;
}

}  // namespace

PressureDiagram::PressureDiagram(const PressPlan& plan, const View& view)
    : plan_(plan), view_(view), rise_(rise_of(plan, view.scale)) {}

double PressureDiagram::pressure(double station) const { return seating(plan_).pressure(station); }

Vec2 PressureDiagram::foot(double station) const { return view_.paper(plan_.neutral.point(station)); }

Vec2 PressureDiagram::tip(double station) const {
  return foot(station) + rise_ * pressure(station) * plan_.neutral.at(station).normal();
}

double PressureDiagram::across(double station) const {
  const Vec2 normal = plan_.neutral.at(station).normal();
  return std::atan2(normal.y(), normal.x());
}

std::vector<double> PressureDiagram::stations(double step) const {
  return divided(plan_, step / view_.scale);
}

std::vector<Stretch> PressureDiagram::pressed() const {
  std::vector<Stretch> out;
  double from = 0;
  const auto add = [&](double to) {
    if (to - from > kSamePoint) out.push_back({from, to});
  };
  for (const Stretch& lifted : seating(plan_).lifted()) {
    add(lifted.from);
    from = lifted.to;
  }
  add(plan_.neutral.girth());
  return out;
}

std::vector<std::vector<Vec2>> PressureDiagram::outlines() const {
  constexpr double kStep = 0.5;
  std::vector<std::vector<Vec2>> out;
  if (rise_ <= 0) return out;
  const std::vector<double> all = stations(kStep);
  for (const Stretch& stretch : pressed()) {
    std::vector<Vec2> feet, tips;
    for (const double station : all) {
      if (station < stretch.from - kSamePoint || station > stretch.to + kSamePoint) continue;
      feet.push_back(foot(station));
      tips.push_back(tip(station));
    }
    tips.insert(tips.end(), feet.rbegin(), feet.rend());
    out.push_back(tips);
  }
  return out;
}

std::vector<Segment> PressureDiagram::mean() const {
  if (rise_ <= 0) return {};
  return view_.paper(segments(offset(plan_.neutral, rise_ * seating(plan_).mean() / view_.scale)));
}

Box2 PressureDiagram::box() const {
  Box2 all = view_.paper(plan_.neutral.box());
  for (const auto& outline : outlines())
    for (const Vec2& p : outline) all.add(p);
  for (const Segment& s : mean()) all.add(lamwright::box(s));
  return all;
}

}  // namespace lamwright::drawing
