// Drawings that the tests of the SVG reader are made of, and measures of what was read.
#pragma once
#include <string>

#include "kernel/profile/drawn/drawn.hpp"
#include "kernel/reading/svg/attribute.hpp"
#include "kernel/reading/svg/svg.hpp"
#include "tests/support/expect.hpp"

namespace lamwright::test::svg_texts {

// One unit is 1 mm.
inline std::string drawing(const std::string& body) {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1000mm\" height=\"500mm\" viewBox=\"0 0 1000 "
         "500\">" +
         body + "</svg>";
}

inline DrawnFile read(const std::string& text) { return read_svg(text, {"shop.svg", 96, {}}); }
inline DrawnFile read_body(const std::string& body) { return read(drawing(body)); }
inline std::string refusal(const std::string& text) {
  return message_of([&] { read(text); });
}
inline std::string refusal_of_body(const std::string& body) { return refusal(drawing(body)); }

// The only curve of a drawing.
inline DrawnCurve curve_of(const std::string& body) {
  const auto file = read_body(body);
  REQUIRE(file.curves.size() == 1);
  return file.curves[0];
}
inline DrawnCurve path_of(const std::string& d) { return curve_of("<path d=\"" + d + "\"/>"); }

inline svg_reading::Attribute attribute(std::string_view text) {
  return {text, {"shop.svg", 3, 0, "path, d"}};
}

inline const Segment& segment_of(const DrawnCurve& curve, std::size_t i) {
  REQUIRE(i < curve.pieces.size());
  REQUIRE(std::holds_alternative<Segment>(curve.pieces[i]));
  return std::get<Segment>(curve.pieces[i]);
}
inline const Bezier& bezier_of(const DrawnCurve& curve, std::size_t i) {
  REQUIRE(i < curve.pieces.size());
  REQUIRE(std::holds_alternative<Bezier>(curve.pieces[i]));
  return std::get<Bezier>(curve.pieces[i]);
}

inline Vec2 point_of(const DrawnPiece& piece, double t) {
  if (const auto* segment = std::get_if<Segment>(&piece)) return segment->point(t);
  return std::get<Bezier>(piece).point(t);
}

struct Measures {
  double length = 0;
  double area = 0;  // anticlockwise positive; of a closed curve
};

// Along `count` chords of each piece.
inline Measures along_chords(const DrawnCurve& curve, int count) {
  Measures out;
  for (const DrawnPiece& piece : curve.pieces)
    for (int i = 0; i < count; ++i) {
      const Vec2 a = point_of(piece, double(i) / count), b = point_of(piece, double(i + 1) / count);
      out.length += (b - a).norm();
      out.area += cross(a, b) / 2;
    }
  return out;
}

// What chords of a smooth curve miss falls with the square of their number, so a third of the last step lies
// between the finer measure and the truth; what is left falls with the fourth power. With 256 chords to a
// turn of a radian that is 1e-11 of the whole.
inline Measures measured(const DrawnCurve& curve) {
  const auto coarse = along_chords(curve, 256), fine = along_chords(curve, 512);
  return {fine.length + (fine.length - coarse.length) / 3, fine.area + (fine.area - coarse.area) / 3};
}

}  // namespace lamwright::test::svg_texts
