#include "exporters/drawing/lettering.hpp"

#include <algorithm>

#include "exporters/drawing/stroke_font.hpp"
#include "shared/text.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kUnits = 100;  // of the font, in the height of capitals
constexpr double kLineWidth = 0.1;
constexpr char32_t kUnreadable = U'\uFFFD';

bool goes_on(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) == 0x80; }

// What is not UTF-8 becomes U+FFFD, with the bytes that would have gone on with it.
std::u32string readable(std::string_view text) {
  std::u32string out;
  while (const auto fault = utf8_fault(text)) {
    out += code_points(text.substr(0, *fault));
    out += kUnreadable;
    text.remove_prefix(*fault + 1);
    while (!text.empty() && goes_on(text.front())) text.remove_prefix(1);
  }
  return out + code_points(text);
}

double width_of(const std::u32string& letters) {
  double width = 0;
  for (const char32_t letter : letters) width += advance(letter).value_or(kBoxAdvance);
  return width;
}

// From the font's units, along the base line, to where the text stands.
class Placing {
 public:
  Placing(const Text& text, double width)
      : scale_(text.height / kUnits), along_(direction(text.angle)), start_(text.at) {
    const double before = text.anchor == Anchor::left ? 0 : text.anchor == Anchor::middle ? width / 2 : width;
    start_ -= before * scale_ * along_;
  }

  Vec2 placed(const Vec2& p, double pen) const {
    return start_ + scale_ * ((p.x() + pen) * along_ + p.y() * left_of(along_));
  }

  Path placed(const Path& path, double pen) const {
    Path out;
    for (const Segment& s : path.segments)
      out.segments.push_back(
          {placed(s.from, pen), placed(s.to, pen), s.turn, placed(s.centre, pen), s.radius * scale_});
    return out;
  }

 private:
  double scale_;
  Vec2 along_;
  Vec2 start_;
};

void note(std::vector<char32_t>& missing, char32_t letter) {
  if (std::find(missing.begin(), missing.end(), letter) == missing.end()) missing.push_back(letter);
}

}  // namespace

Lettering lettered(const Text& text) {
  const std::u32string letters = readable(text.text);
  const Placing placing(text, width_of(letters));
  Lettering out;
  double pen = 0;
  for (const char32_t letter : letters) {
    const auto known = glyph(letter);
    if (!known) note(out.missing, letter);
    const Glyph drawn = known ? *known : box_glyph();
    for (const Path& stroke : drawn.strokes) out.strokes.push_back(placing.placed(stroke, pen));
    pen += drawn.advance;
  }
  return out;
}

std::vector<PlacedLetter> placed_letters(const Text& text) {
  const std::u32string letters = readable(text.text);
  const Placing placing(text, width_of(letters));
  std::vector<PlacedLetter> out;
  double pen = 0;
  for (const char32_t letter : letters) {
    const auto known = advance(letter);
    out.push_back({letter, placing.placed(Vec2{0, 0}, pen), known.has_value()});
    pen += known.value_or(kBoxAdvance);
  }
  return out;
}

double lettered_width(const std::string& text, double height) {
  return width_of(readable(text)) * height / kUnits;
}

double stroke_width(double height) { return kLineWidth * height; }

}  // namespace lamwright::drawing
