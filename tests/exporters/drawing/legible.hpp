// What can be read on a drawing, and what makes it hard to read.
#pragma once
#include <algorithm>
#include <string>
#include <vector>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::test {

inline std::vector<drawing::Text> texts(const drawing::Drawing& sheet) {
  std::vector<drawing::Text> out;
  for (const drawing::Item& item : sheet.items())
    if (const auto* text = std::get_if<drawing::Text>(&item.shape)) out.push_back(*text);
  return out;
}

inline int count_of(const drawing::Drawing& sheet, const std::string& whole) {
  const auto all = texts(sheet);
  return static_cast<int>(
      std::count_if(all.begin(), all.end(), [&](const drawing::Text& text) { return text.text == whole; }));
}

// Some text holds this.
inline bool says(const drawing::Drawing& sheet, const std::string& wanted) {
  const auto all = texts(sheet);
  return std::any_of(all.begin(), all.end(),
                     [&](const drawing::Text& text) { return text.text.find(wanted) != std::string::npos; });
}

inline std::vector<Segment> drawn_with(const drawing::Drawing& sheet, const std::string& pen) {
  std::vector<Segment> out;
  for (const drawing::Item& item : sheet.items())
    if (sheet.pens()[item.pen].name == pen)
      for (const Segment& s : drawing::strokes(item.shape)) out.push_back(s);
  return out;
}

inline Box2 box_of_strokes(const std::vector<Segment>& strokes) {
  Box2 all;
  for (const Segment& s : strokes) all.add(lamwright::box(s));
  return all;
}

// Inside the frame of ISO 5457: 20 at the left for filing, 10 elsewhere.
inline Box2 frame_of(const drawing::Drawing& sheet) { return {{20, 10}, sheet.size() - Vec2(10, 10)}; }

// Each fault in words; `seen` counts the pairs looked at.
inline std::vector<std::string> faults(const drawing::Drawing& sheet, long& seen) {
  using namespace drawing;
  std::vector<std::string> out;
  auto all = texts(sheet);
  std::erase_if(all, [](const Text& text) { return text.text.empty(); });
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!within(text_box(all[i]), frame_of(sheet))) out.push_back(all[i].text + ": outside the frame");
    for (std::size_t j = 0; j < i; ++j, ++seen)
      // The estimate of widths is a little wide, so boxes may graze.
      if (overlap(grown(text_box(all[i]), -0.3), text_box(all[j])))
        out.push_back(all[i].text + ": over " + all[j].text);
    // Without descenders, a little inside the estimate.
    const auto [a, b, c, d] = text_corners(all[i]);
    const Vec2 up = (d - a) / (d - a).norm(), in = (b - a) * 0.06;
    const std::vector<Vec2> letters{a + in + 0.35 * all[i].height * up, b - in + 0.35 * all[i].height * up,
                                    c - in - 0.1 * up, d + in - 0.1 * up};
    for (const Item& item : sheet.items()) {
      if (sheet.pens()[item.pen].width <= 0) continue;
      for (const Segment& s : strokes(item.shape)) {
        ++seen;
        if (touches(s, letters))
          out.push_back(all[i].text + ": a line of " + sheet.pens()[item.pen].name + " runs through it");
      }
    }
  }
  return out;
}

}  // namespace lamwright::test
