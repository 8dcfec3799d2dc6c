// How much room a text takes, estimated without a font: good enough to keep texts apart.
#pragma once
#include <array>
#include <initializer_list>
#include <optional>
#include <string>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

// Heights of capitals (ISO 3098-1, nominal sizes).
inline constexpr double kLabelHeight = 1.8;
inline constexpr double kSmallHeight = 2.5;
inline constexpr double kTextHeight = 3.5;
inline constexpr double kTitleHeight = 5;

// Capitals of common sans-serif fonts are about 0.72 of the font size high.
double font_size(double height);

// Estimated length of the text, mm, in a wide sans-serif font (a digit 0.64 of the font size); narrower ones
// leave some room. East Asian characters count as square.
double text_width(const std::string& text, double height);

// Corners of the text's own box, with its descenders, anticlockwise from the lower left as it is read.
std::array<Vec2, 4> text_corners(const Text& text);
// The upright box that holds the text.
Box2 text_box(const Text& text);
// Round all that the shape draws; nothing where that is nothing.
std::optional<Box2> box_of(const Shape& shape);

// The text in the first of the heights in which it fits `width`; else in the last one, shortened to "...".
Text fitted(const Vec2& at, const std::string& text, double width, std::initializer_list<double> heights);

// Length for people, mm: a tenth is finer than a saw. "411.5"
std::string size_text(double value);
std::string diameter_text(double value);  // "Ø12"
std::string angle_text(double radians);   // "25°"

}  // namespace lamwright::drawing
