#include "exporters/drawing/plan_bodies.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright::drawing {

Span depth_of(const PressPlan& plan, const Body& body) {
  const Part::Box box = plan.parts[body.part].box();
  Span span{INFINITY, -INFINITY};
  for (const double x : {box.low.x(), box.high.x()})
    for (const double y : {box.low.y(), box.high.y()})
      for (const double z : {box.low.z(), box.high.z()}) {
        const double depth = body.placed.point({x, y, z}).z();
        span = {std::min(span.low, depth), std::max(span.high, depth)};
      }
  return span;
}

bool of_mould(const PressPlan& plan, const Body& body) {
  const bool half = body.group == Group::lower || body.group == Group::upper;
  return half && plan.parts[body.part].kind() != PartKind::slat;
}

bool former(PartKind kind) { return kind == PartKind::former_lower || kind == PartKind::former_upper; }

std::vector<const Body*> bodies_at(const PressPlan& plan, double z) {
  std::vector<const Body*> out;
  for (const Body& body : plan.bodies) {
    if (!of_mould(plan, body)) continue;
    const Span depth = depth_of(plan, body);
    if (z > depth.low + kSamePoint && z < depth.high - kSamePoint) out.push_back(&body);
  }
  return out;
}

std::vector<const Body*> blocks_behind(const PressPlan& plan, double z) {
  std::vector<const Body*> out;
  double far_face = z;
  for (const Body* body : bodies_at(plan, z))
    if (former(plan.parts[body->part].kind())) far_face = std::max(far_face, depth_of(plan, *body).high);
  for (const Body& body : plan.bodies) {
    const PartKind kind = plan.parts[body.part].kind();
    const bool block = kind == PartKind::fixing_block || kind == PartKind::spacer_block;
    if (block && std::abs(depth_of(plan, body).low - far_face) < 0.01) out.push_back(&body);
  }
  return out;
}

std::vector<Segment> outline_of(const PressPlan& plan, const Body& body) {
  return silhouette(plan.parts[body.part], {body.placed, {}});
}

double section_station(const PressPlan& plan) {
  for (const Section& section : plan.sections)
    if (section.strapped) return section.z;
  return plan.sections.empty() ? 0 : plan.sections.front().z;
}

const Closure* closure_at(const PressPlan& plan, double z) {
  const auto nearest = std::min_element(
      plan.closures.begin(), plan.closures.end(),
      [&](const Closure& a, const Closure& b) { return std::abs(a.z - z) < std::abs(b.z - z); });
  return nearest == plan.closures.end() ? nullptr : &*nearest;
}

std::vector<Span> cut_at(const std::vector<Segment>& loop, double x) {
  const Box2 box = box_of(loop);
  // A hair beside x: joints often lie on the centre line, where each edge would count once.
  const double beside = x + 1e-3;
  const Segment upright = line({beside, box.low.y() - 1}, {beside, box.high.y() + 1});
  std::vector<double> heights;
  for (const Segment& s : loop)
    for (const Vec2& p : crossings(upright, s)) heights.push_back(p.y());
  std::sort(heights.begin(), heights.end());
  std::vector<Span> out;
  for (std::size_t i = 0; i + 1 < heights.size(); i += 2) out.push_back({heights[i], heights[i + 1]});
  return out;
}

}  // namespace lamwright::drawing
