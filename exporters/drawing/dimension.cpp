#include "exporters/drawing/dimension.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kArrow = 3;
constexpr double kArrowHalf = 0.45;
constexpr double kGap = 1;  // between feature and extension line
constexpr double kOvershoot = 1.5;
constexpr double kTextGap = 0.9;  // between dimension line and text
constexpr double kTail = 4.5;     // of an arrow that stands outside

// A dimension line laid out along `along`; `level` is its distance from the origin to the left of that
// direction.
struct Layout {
  Vec2 along;
  double level;
  Vec2 up() const { return left_of(along); }
  Vec2 foot(const Vec2& p) const { return p.dot(along) * along + level * up(); }
};

void extension_line(Drawing& drawing, const Vec2& feature, const Vec2& foot) {
  const Vec2 way = foot - feature;
  const double length = way.norm();
  if (length <= kGap) return;
  const Vec2 u = way / length;
  drawing.add(pens::kDimension, line(feature + kGap * u, foot + kOvershoot * u));
}

// Text on the upper side of the line, to be read from below or from the right (ISO 129-1).
double reading_angle(const Vec2& along) {
  double angle = std::atan2(along.y(), along.x());
  if (angle > kPi / 2 + 1e-9) angle -= kPi;
  if (angle <= -kPi / 2 + 1e-9) angle += kPi;
  return angle;
}

Text text_over(const Vec2& middle, const Vec2& along, const std::string& text) {
  const double angle = reading_angle(along);
  return {middle + kTextGap * left_of(direction(angle)), text, kSmallHeight, Anchor::middle, angle};
}

// The share nearest to the wanted one at which the text covers nothing.
std::optional<double> free_share(const Drawing& drawing, const Linear& size, const Vec2& a, const Vec2& b) {
  constexpr double kStep = 0.03, kBeside = 0.5;
  const Vec2 along = b - a;
  const double half = (text_width(size.text, kSmallHeight) / 2 + kArrow + kBeside) / along.norm();
  const Clearance& sheet = drawing.taken();
  for (double move = 0; move < 1; move += kStep)
    for (const double share : {size.share - move, size.share + move}) {
      if (share < half || share > 1 - half) continue;
      if (sheet.free(text_over(a + share * along, along.normalized(), size.text), kBeside)) return share;
    }
  return std::nullopt;
}

Layout aligned(const Linear& size, double offset) {
  const Vec2 along = (size.to - size.from).normalized();
  return {along, size.from.dot(left_of(along)) + offset};
}

void linear(Drawing& drawing, Linear size, const Layout& layout) {
  if ((size.to - size.from).dot(layout.along) < 0) {
    std::swap(size.from, size.to);
    size.share = 1 - size.share;
  }
  const Vec2 a = layout.foot(size.from), b = layout.foot(size.to), u = layout.along;
  if (size.extension_lines) {
    extension_line(drawing, size.from, a);
    extension_line(drawing, size.to, b);
  }
  const double length = (b - a).norm();
  const double width = text_width(size.text, kSmallHeight);
  const bool inside = length >= 2 * kArrow + 1;
  const bool text_inside = length >= width + 1 && (inside || length >= width + 2);
  arrow(drawing, a, inside ? Vec2(-u) : u);
  arrow(drawing, b, inside ? u : Vec2(-u));
  const double tail = inside ? 0 : kTail;
  const double reach = text_inside ? tail : std::max(tail, kArrow + 1) + width;
  const Vec2 middle = text_inside ? Vec2(a + free_share(drawing, size, a, b).value_or(size.share) * (b - a))
                                  : Vec2(b + (reach - width / 2) * u);
  drawing.add(pens::kDimension, line(a - tail * u, b + reach * u));
  drawing.add(pens::kDimension, text_over(middle, u, size.text));
}

}  // namespace

void arrow(Drawing& drawing, const Vec2& tip, const Vec2& toward) {
  const Vec2 back = tip - kArrow * toward, side = kArrowHalf * left_of(toward);
  drawing.add(pens::kDimension, polygon({tip, back + side, back - side}, tints::kBlack));
}

void horizontal_dimension(Drawing& drawing, const Linear& size, double y) {
  linear(drawing, size, {{1, 0}, y});
}
void vertical_dimension(Drawing& drawing, const Linear& size, double x) {
  linear(drawing, size, {{0, 1}, -x});
}

void aligned_dimension(Drawing& drawing, const Linear& size, double offset) {
  linear(drawing, size, aligned(size, offset));
}

void size_on_line(Drawing& drawing, const Linear& size) {
  const Vec2 along = size.to - size.from, u = along.normalized();
  const double share = free_share(drawing, size, size.from, size.to).value_or(size.share);
  arrow(drawing, size.from, -u);
  arrow(drawing, size.to, u);
  drawing.add(pens::kDimension, text_over(size.from + share * along, u, size.text));
}

bool aligned_dimension_fits(const Drawing& drawing, const Linear& size, double offset) {
  const Layout layout = aligned(size, offset);
  const Vec2 a = layout.foot(size.from), b = layout.foot(size.to);
  return drawing.taken().free_of_text(line(a, b)) && free_share(drawing, size, a, b).has_value();
}

bool beside_parallel(const Drawing& drawing, const Segment& stroke) {
  constexpr double kRoom = 4, kParallel = 0.03;
  const Vec2 along = stroke.tangent(0);
  const auto near = [&](const Segment& s) {
    return s.straight() && s.length() > kArrow + kGap && std::abs(cross(along, s.tangent(0))) < kParallel &&
           (distance(s, stroke.point(0.5)) < kRoom || distance(stroke, s.point(0.5)) < kRoom);
  };
  return std::any_of(drawing.items().begin(), drawing.items().end(), [&](const Item& item) {
    if (drawing.pens()[item.pen].name != pens::kDimension) return false;
    const auto lines = strokes(item.shape);
    return std::any_of(lines.begin(), lines.end(), near);
  });
}

void angle_dimension(Drawing& drawing, const Angular& angle) {
  const auto at = [&](double a) { return Vec2(angle.vertex + angle.radius * direction(a)); };
  const double sense = angle.sweep > 0 ? 1 : -1;
  const bool inside = angle.radius * std::abs(angle.sweep) >= 2 * kArrow + 1;
  const double tail = inside ? 0 : kTail / angle.radius;
  const double from = angle.from - sense * tail, sweep = angle.sweep + 2 * sense * tail;
  const double to = angle.from + angle.sweep;
  drawing.add(pens::kDimension, Segment{at(from), at(from + sweep), sweep, angle.vertex, angle.radius});
  const double lean = kArrow / 2 / angle.radius;  // the arrow follows the arc's chord
  const double out = inside ? -sense : sense;
  arrow(drawing, at(angle.from), out * left_of(direction(angle.from - out * lean)));
  arrow(drawing, at(to), -out * left_of(direction(to + out * lean)));
  if (angle.text.empty()) return;
  const Vec2 way = direction(angle.from + angle.sweep / 2);
  const double half_width = text_width(angle.text, kSmallHeight) / 2, half_height = kSmallHeight / 2;
  const Vec2 middle = at(angle.from + angle.sweep / 2) +
                      (1.2 + std::abs(way.x()) * half_width + std::abs(way.y()) * half_height) * way;
  drawing.add(pens::kDimension,
              Text{middle - Vec2(0, half_height), angle.text, kSmallHeight, Anchor::middle});
}

void centre_cross(Drawing& drawing, const Vec2& middle, double radius) {
  const double reach = radius + 1.5;
  drawing.add(pens::kCentre, line(middle - Vec2(reach, 0), middle + Vec2(reach, 0)));
  drawing.add(pens::kCentre, line(middle - Vec2(0, reach), middle + Vec2(0, reach)));
}

}  // namespace lamwright::drawing
