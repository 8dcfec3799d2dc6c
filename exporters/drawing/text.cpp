#include "exporters/drawing/text.hpp"

#include <array>
#include <cmath>
#include <string_view>

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kCapitals = 0.72;  // of the font size
constexpr double kDescender = 0.3;  // of the height of capitals

constexpr bool begins_character(unsigned char byte) { return (byte & 0xC0) != 0x80; }
// Lead bytes from E3 on hold U+3000 and beyond: mostly East Asian scripts.
constexpr bool east_asian(unsigned char byte) { return byte >= 0xE3; }

// Width of a character by its first byte, of the font size.
constexpr double character_width(unsigned char byte) {
  constexpr std::string_view kNarrow = " .,:;'|!iljtfI()[]-/", kWide = "mwMW@%";
  if (!begins_character(byte)) return 0;
  if (east_asian(byte)) return 1;
  const char c = static_cast<char>(byte);
  if (kNarrow.find(c) != std::string_view::npos) return 0.4;
  if (kWide.find(c) != std::string_view::npos) return 0.98;
  return c >= 'A' && c <= 'Z' ? 0.72 : 0.64;
}

constexpr std::array<double, 256> kWidths = [] {
  std::array<double, 256> out{};
  for (std::size_t byte = 0; byte < out.size(); ++byte)
    out[byte] = character_width(static_cast<unsigned char>(byte));
  return out;
}();

std::string shortened(const std::string& text, double width, double height) {
  std::string cut = text;
  while (!cut.empty() && text_width(cut + "...", height) > width) {
    while (!cut.empty() && !begins_character(static_cast<unsigned char>(cut.back()))) cut.pop_back();
    if (!cut.empty()) cut.pop_back();
  }
  return cut + "...";
}

}  // namespace

double font_size(double height) { return height / kCapitals; }

double text_width(const std::string& text, double height) {
  double width = 0;
  for (const char c : text) width += kWidths[static_cast<unsigned char>(c)];
  return width * font_size(height);
}

std::array<Vec2, 4> text_corners(const Text& text) {
  const double width = text_width(text.text, text.height);
  const double before = text.anchor == Anchor::left ? 0 : text.anchor == Anchor::middle ? width / 2 : width;
  const Vec2 along = direction(text.angle);
  const Vec2 up = left_of(along);
  const Vec2 left = text.at - before * along, right = left + width * along;
  const Vec2 below = -kDescender * text.height * up, above = text.height * up;
  return {left + below, right + below, right + above, left + above};
}

Box2 text_box(const Text& text) {
  Box2 box;
  for (const Vec2& corner : text_corners(text)) box.add(corner);
  return box;
}

std::optional<Box2> box_of(const Shape& shape) {
  if (const auto* text = std::get_if<Text>(&shape)) return text_box(*text);
  const std::vector<Segment> all = strokes(shape);
  if (all.empty()) return std::nullopt;
  Box2 out;
  for (const Segment& s : all) out.add(box(s));
  return out;
}

Text fitted(const Vec2& at, const std::string& text, double width, std::initializer_list<double> heights) {
  double last = 0;
  for (const double height : heights) {
    if (text_width(text, height) <= width) return {at, text, height};
    last = height;
  }
  return {at, shortened(text, width, last), last};
}

std::string size_text(double value) { return number(value, 1); }
std::string diameter_text(double value) { return "Ø" + number(value, 2); }
std::string angle_text(double radians) { return number(degrees(radians), 1) + "°"; }

}  // namespace lamwright::drawing
