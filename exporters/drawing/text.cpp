#include "exporters/drawing/text.hpp"

#include <cmath>

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kCapitals = 0.72;   // of the font size
constexpr double kDescender = 0.3;   // of the height of capitals
constexpr double kCharacter = 0.6;   // of the font size
constexpr double kWideCharacter = 1;

bool begins_character(unsigned char byte) { return (byte & 0xC0) != 0x80; }
// Lead bytes from E3 on hold U+3000 and beyond: mostly East Asian scripts.
bool wide(unsigned char byte) { return byte >= 0xE3; }

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
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (begins_character(byte)) width += wide(byte) ? kWideCharacter : kCharacter;
  }
  return width * font_size(height);
}

Box2 text_box(const Text& text) {
  const double width = text_width(text.text, text.height);
  const double before = text.anchor == Anchor::left ? 0 : text.anchor == Anchor::middle ? width / 2 : width;
  const Vec2 along = direction(text.angle);
  const Vec2 up = left_of(along);
  Box2 box;
  for (const double x : {-before, width - before})
    for (const double y : {-kDescender * text.height, text.height}) box.add(Vec2(text.at + x * along + y * up));
  return box;
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
