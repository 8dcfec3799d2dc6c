#include "exporters/drawing/clearance.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {

bool within(const Box2& inner, const Box2& outer) {
  return (inner.low.array() >= outer.low.array()).all() && (inner.high.array() <= outer.high.array()).all();
}

Box2 grown(const Box2& box, double by) { return {box.low - Vec2(by, by), box.high + Vec2(by, by)}; }

namespace {

// Far from the whole polygon: most questions end here.
bool passes_by(const Segment& stroke, const std::vector<Vec2>& corners) {
  constexpr double kClear = 10 * kSamePoint;
  double least = INFINITY, most = -INFINITY;  // of the corners, beside the line or from the arc's centre
  if (stroke.straight()) {
    const Vec2 side = left_of(stroke.tangent(0));
    for (const Vec2& corner : corners) {
      const double off = side.dot(corner - stroke.from);
      least = std::min(least, off);
      most = std::max(most, off);
    }
    return least > kClear || most < -kClear;
  }
  Box2 all;
  for (const Vec2& corner : corners) {
    all.add(corner);
    most = std::max(most, (corner - stroke.centre).norm());
  }
  least = (stroke.centre.cwiseMax(all.low).cwiseMin(all.high) - stroke.centre).norm();
  return least > stroke.radius + kClear || most < stroke.radius - kClear;
}

}  // namespace

bool touches(const Segment& stroke, const Box2& box) {
  if (!overlap(lamwright::box(stroke), box)) return false;
  return touches(
      stroke, std::vector<Vec2>{box.low, {box.high.x(), box.low.y()}, box.high, {box.low.x(), box.high.y()}});
}

bool touches(const Segment& stroke, const std::vector<Vec2>& corners) {
  if (passes_by(stroke, corners)) return false;
  const auto side = [&](std::size_t i) { return line(corners[i], corners[(i + 1) % corners.size()]); };
  const auto left_of_all = [&](const Vec2& p) {
    for (std::size_t i = 0; i < corners.size(); ++i)
      if (const Segment s = side(i); cross(s.to - s.from, p - s.from) < 0) return false;
    return true;
  };
  if (left_of_all(stroke.from) || left_of_all(stroke.to)) return true;
  for (std::size_t i = 0; i < corners.size(); ++i)
    if (!crossings(stroke, side(i)).empty()) return true;
  return false;
}

void Clearance::add(const Shape& shape, bool stroked) {
  if (const auto* text = std::get_if<Text>(&shape)) {
    const auto corners = text_corners(*text);
    texts_.emplace_back(corners.begin(), corners.end());
    text_boxes_.add(text_box(*text));
  }
  if (!stroked) return;
  for (const Segment& s : strokes(shape)) {
    strokes_.push_back(s);
    boxes_.add(lamwright::box(s));
  }
}

bool Clearance::any_text(const Box2& box) const {
  return text_boxes_.any(box, [](std::size_t) { return true; });
}

bool Clearance::free(const Box2& box) const {
  return !any_text(box) && !any_near(box, [&](const Segment& s) { return touches(s, box); });
}

bool Clearance::free(const Text& text, double room) const {
  const auto [a, b, c, d] = text_corners(text);
  const Vec2 beside = room * direction(text.angle);
  const std::vector<Vec2> corners{a - beside, b + beside, c + beside, d - beside};
  Box2 box;
  for (const Vec2& corner : corners) box.add(corner);
  return !any_text(box) && !any_near(box, [&](const Segment& s) { return touches(s, corners); });
}

bool Clearance::free_of_text(const Segment& stroke) const {
  return !text_boxes_.any(lamwright::box(stroke), [&](std::size_t i) { return touches(stroke, texts_[i]); });
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
