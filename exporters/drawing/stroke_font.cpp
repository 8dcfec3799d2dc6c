#include "exporters/drawing/stroke_font.hpp"

#include <algorithm>

#include "exporters/drawing/stroke_notation.hpp"
#include "shared/error.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kCapital = 100, kSmall = 70;
constexpr double kBesideMark = 9;  // room left and right of a mark wider than its letter
constexpr double kLowered = -48;   // the lower figure of a fraction under the raised one
constexpr char32_t kFractionBar = U'⁄';

template <class Row>
const Row* row_of(std::span<const Row> table, char32_t Row::*key, char32_t letter) {
  const auto found =
      std::find_if(table.begin(), table.end(), [&](const Row& row) { return row.*key == letter; });
  return found == table.end() ? nullptr : &*found;
}

const DrawnLetter* drawn(char32_t letter) {
  const auto* row = row_of(drawn_letters(), &DrawnLetter::letter, letter);
  return row ? row : row_of(drawn_signs(), &DrawnLetter::letter, letter);
}

const DrawnLetter& known(char32_t letter) {
  const DrawnLetter* row = drawn(letter);
  ensure(row != nullptr, "letters are made of letters that exist");
  return *row;
}

void add(std::vector<Path>& out, const std::vector<Path>& strokes, const Vec2& by) {
  for (Path path : strokes) {
    for (Segment& s : path.segments) s = {s.from + by, s.to + by, s.turn, s.centre + by, s.radius};
    out.push_back(std::move(path));
  }
}

Glyph of(const DrawnLetter& row) {
  Glyph out{row.advance, {}};
  add(out.strokes, strokes_of(row.strokes), {row.before, 0});
  return out;
}

const Mark& mark_of(const MarkedLetter& row) {
  const Mark* mark = row_of(marks(), &Mark::mark, row.mark);
  ensure(mark != nullptr, "letters carry marks that exist");
  return *mark;
}

double advance_of(const MarkedLetter& row) {
  return std::max(known(row.base).advance, 2 * (mark_of(row).half_width + kBesideMark));
}

// Marks above stand on capitals or small letters, marks below (cedilla) on the base line.
double foot_of_mark(const MarkedLetter& row) {
  if (row.mark == U'\u0327') return 0;
  return (row.base >= U'A' && row.base <= U'Z' ? kCapital : kSmall) + row.raise;
}

Glyph of(const MarkedLetter& row) {
  const Glyph base = of(known(row.base));
  Glyph out{advance_of(row), {}};
  add(out.strokes, base.strokes, {(out.advance - base.advance) / 2, 0});
  add(out.strokes, strokes_of(mark_of(row).strokes), {out.advance / 2 + row.shift, foot_of_mark(row)});
  return out;
}

double advance_of(const Fraction& row) { return row.lower_at + known(row.lower).advance; }

Glyph of(const Fraction& row) {
  Glyph out{advance_of(row), of(known(row.upper)).strokes};
  add(out.strokes, of(known(kFractionBar)).strokes, {row.bar_at, 0});
  add(out.strokes, of(known(row.lower)).strokes, {row.lower_at, kLowered});
  return out;
}

}  // namespace

std::optional<Glyph> glyph(char32_t letter) {
  if (const auto* row = drawn(letter)) return of(*row);
  if (const auto* row = row_of(marked_letters(), &MarkedLetter::letter, letter)) return of(*row);
  if (const auto* row = row_of(fractions(), &Fraction::letter, letter)) return of(*row);
  return std::nullopt;
}

std::optional<double> advance(char32_t letter) {
  if (const auto* row = drawn(letter)) return row->advance;
  if (const auto* row = row_of(marked_letters(), &MarkedLetter::letter, letter)) return advance_of(*row);
  if (const auto* row = row_of(fractions(), &Fraction::letter, letter)) return advance_of(*row);
  return std::nullopt;
}

Glyph box_glyph() { return of(DrawnLetter{0, 12, kBoxAdvance, "0,0 50,0 50,100 0,100 0,0"}); }

std::u32string font_letters() {
  std::u32string out;
  for (const auto& row : drawn_letters()) out += row.letter;
  for (const auto& row : drawn_signs()) out += row.letter;
  for (const auto& row : marked_letters()) out += row.letter;
  for (const auto& row : fractions()) out += row.letter;
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace lamwright::drawing
