#include "exporters/drawing/clearance.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {

bool within(const Box2& inner, const Box2& outer) {
  return (inner.low.array() >= outer.low.array()).all() && (inner.high.array() <= outer.high.array()).all();
}

Box2 grown(const Box2& box, double by) { return {box.low - Vec2(by, by), box.high + Vec2(by, by)}; }

bool touches(const Segment& stroke, const Box2& box) {
  if (!overlap(lamwright::box(stroke), box)) return false;
  return touches(
      stroke, std::vector<Vec2>{box.low, {box.high.x(), box.low.y()}, box.high, {box.low.x(), box.high.y()}});
}

bool touches(const Segment& stroke, const std::vector<Vec2>& corners) {
  const auto sides = polygon(corners).segments;
  const auto left_of_all = [&](const Vec2& p) {
    return std::all_of(sides.begin(), sides.end(),
                       [&](const Segment& side) { return cross(side.to - side.from, p - side.from) >= 0; });
  };
  if (left_of_all(stroke.from) || left_of_all(stroke.to)) return true;
  return std::any_of(sides.begin(), sides.end(),
                     [&](const Segment& side) { return !crossings(stroke, side).empty(); });
}

Clearance::Words Clearance::words(const Text& text) {
  const auto corners = text_corners(text);
  return {{corners.begin(), corners.end()}, text_box(text)};
}

Clearance::Clearance(const Drawing& drawing) {
  for (const Item& item : drawing.items()) {
    if (const auto* text = std::get_if<Text>(&item.shape)) texts_.push_back(words(*text));
    if (drawing.pens()[item.pen].width <= 0) continue;
    for (const Segment& s : strokes(item.shape)) {
      strokes_.push_back(s);
      boxes_.push_back(lamwright::box(s));
    }
  }
}

bool Clearance::free(const Box2& box) const {
  return std::none_of(texts_.begin(), texts_.end(),
                      [&](const Words& text) { return overlap(text.box, box); }) &&
         !any_near(box, [&](const Segment& s) { return touches(s, box); });
}

bool Clearance::free(const Text& text, double room) const {
  const auto [a, b, c, d] = text_corners(text);
  const Vec2 beside = room * direction(text.angle);
  const std::vector<Vec2> corners{a - beside, b + beside, c + beside, d - beside};
  Box2 box;
  for (const Vec2& corner : corners) box.add(corner);
  return std::none_of(texts_.begin(), texts_.end(),
                      [&](const Words& other) { return overlap(other.box, box); }) &&
         !any_near(box, [&](const Segment& s) { return touches(s, corners); });
}

bool Clearance::free_of_text(const Segment& stroke) const {
  const Box2 box = lamwright::box(stroke);
  return std::none_of(texts_.begin(), texts_.end(), [&](const Words& text) {
    return overlap(text.box, box) && touches(stroke, text.corners);
  });
}

int Clearance::crossings_with(const Segment& stroke) const {
  int count = 0;
  any_near(lamwright::box(stroke), [&](const Segment& s) {
    count += static_cast<int>(crossings(s, stroke).size());
    return false;
  });
  return count;
}

bool Clearance::runs_along(const Segment& stroke) const {
  constexpr double kNear = 0.4, kParallel = 0.03;
  const Vec2 u = stroke.tangent(0);
  const Box2 near = grown(lamwright::box(stroke), kNear);
  return any_near(near, [&](const Segment& s) {
    if (!s.straight() || s.length() < kNear || std::abs(cross(u, s.tangent(0))) > kParallel) return false;
    return distance(s, stroke.point(0.5)) < kNear || distance(stroke, s.point(0.5)) < kNear;
  });
}

}  // namespace lamwright::drawing
