#include "exporters/drawing/chord_dimensions.hpp"

#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {
namespace {

bool add_along(Drawing& drawing, const Linear& size) {
  constexpr double kBeside = 10;  // room for arrows beside the text
  if ((size.to - size.from).norm() < text_width(size.text, kSmallHeight) + kBeside) return false;
  if (!aligned_dimension_fits(drawing, size, 0)) return false;
  vertical_dimension(drawing, size, size.from.x());
  return true;
}

// The text level, to the right of the middle of the line or else to the left.
bool add_across(Drawing& drawing, const Linear& size) {
  constexpr double kLeast = 8, kApart = 1;  // two arrows; between line and text
  const Vec2 way = size.to - size.from, along = way.normalized();
  if (way.norm() < kLeast) return false;
  const Clearance& sheet = drawing.taken();
  if (!sheet.free_of_text(line(size.from, size.to))) return false;
  for (const double side : {1, -1}) {
    const Vec2 at = (size.from + size.to) / 2 + Vec2(side * kApart, -kSmallHeight / 2);
    const Text text{at, size.text, kSmallHeight, side > 0 ? Anchor::left : Anchor::right};
    if (!sheet.free(text, 0)) continue;
    drawing.add(pens::kDimension, line(size.from, size.to));
    arrow(drawing, size.from, -along);
    arrow(drawing, size.to, along);
    drawing.add(pens::kDimension, text);
    return true;
  }
  return false;
}

}  // namespace

std::string chord_text(const LevelCurve& curve) { return curve.open() ? size_text(curve.chord()) : "-"; }

std::string rise_text(const LevelCurve& curve) { return curve.open() ? size_text(curve.rise()) : "-"; }

void add_chord(Drawing& drawing, const LevelCurve& curve, const View& view, double level) {
  if (!curve.open()) return;
  constexpr double kSeen = 1;  // a rise on paper that parts the chord from the curve
  const Vec2 left = view.paper(curve.profile().start().point),
             right = view.paper(curve.profile().end().point);
  horizontal_dimension(drawing, {left, right, "chord " + chord_text(curve)}, level);
  if (view.scale * std::abs(curve.rise()) >= kSeen) drawing.add(pens::kHidden, line(left, right));
}

void add_rise(Drawing& drawing, const LevelCurve& curve, const View& view) {
  if (!curve.open()) return;
  constexpr double kNearTheChord = 0.3;  // where along its line the text should stand
  const Vec2 summit = view.paper(curve.profile().point(curve.summit()));
  const Vec2 foot{summit.x(), view.paper(curve.profile().start().point).y()};
  const Linear size{foot, summit, "rise " + rise_text(curve), kNearTheChord, false};
  if (!add_along(drawing, size)) add_across(drawing, size);
}

}  // namespace lamwright::drawing
