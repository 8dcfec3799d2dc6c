// Small texts that lines of dimensions come near to.
#pragma once
#include "tests/exporters/drawing/legible.hpp"

namespace lamwright::test {

// Half a capital's thickness of air and the line's own: nearer than this a line seems to strike the text out.
inline constexpr double kTouched = 0.7;

// Upright texts 2.5 high with a line of the dimensions' pen nearer than that, in words; `seen` counts the
// pairs looked at. Measured from the capitals, without descenders.
inline std::vector<std::string> touched_labels(const drawing::Drawing& sheet, std::size_t& seen) {
  const auto lines = drawn_with(sheet, drawing::pens::kDimension);
  std::vector<std::string> out;
  for (const drawing::Text& text : texts(sheet)) {
    if (text.height != drawing::kSmallHeight || text.angle != 0 || text.text.empty()) continue;
    const Box2 box = drawing::text_box(text);
    const Vec2 low{box.low.x() - kTouched, text.at.y() - kTouched},
        high{box.high.x() + kTouched, text.at.y() + text.height + kTouched};
    const std::vector<Vec2> around{low, {high.x(), low.y()}, high, {low.x(), high.y()}};
    for (const Segment& s : lines) {
      ++seen;
      if (drawing::touches(s, around)) out.push_back(text.text);
    }
  }
  return out;
}

}  // namespace lamwright::test
