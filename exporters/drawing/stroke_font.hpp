// The project's own letters, each as single strokes: an upright sans in the proportions of ISO 3098 type B.
// All figures in hundredths of the height of capitals; x from the letter's left, y from the base line.
#pragma once
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

struct Glyph {
  double advance = 0;
  std::vector<Path> strokes;
};

// Nothing when the font has no such letter.
std::optional<Glyph> glyph(char32_t letter);
std::optional<double> advance(char32_t letter);

// Drawn in place of what the font does not have.
inline constexpr double kBoxAdvance = 74;
Glyph box_glyph();

// Every letter the font has, by code point.
std::u32string font_letters();

// A letter as its own drawing (stroke_notation.hpp) whose x = 0 lies `before` to the right of the letter's
// left.
struct DrawnLetter {
  char32_t letter;
  double before;
  double advance;
  std::string_view strokes;
};

// A letter made of another and a mark (U+0300 and on) over the middle of it or, `raise` given, higher.
struct MarkedLetter {
  char32_t letter;
  char32_t base;
  char32_t mark;
  double shift = 0;  // to the right of the middle
  double raise = 0;
};

// A mark is drawn about x = 0; y counts from the top of the letter under it.
struct Mark {
  char32_t mark;
  double half_width;
  std::string_view strokes;
};

// Two raised figures, the lower one let down, with a bar between them: "½".
struct Fraction {
  char32_t letter;
  char32_t upper;
  double bar_at;
  char32_t lower;
  double lower_at;
};

// The tables: each letter stands in one of them, once.
std::span<const DrawnLetter> drawn_letters();
std::span<const DrawnLetter> drawn_signs();
std::span<const Mark> marks();
std::span<const MarkedLetter> marked_letters();
std::span<const Fraction> fractions();

}  // namespace lamwright::drawing
