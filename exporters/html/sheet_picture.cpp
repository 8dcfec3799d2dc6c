#include "exporters/html/sheet_picture.hpp"

#include <optional>

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"

namespace lamwright::html {
namespace {

using drawing::Drawing;

constexpr double kWidth = 180;         // mm on paper
constexpr double kLetters = 2.2;       // greatest height
constexpr double kLeastLetters = 1.2;  // smaller names are left out

std::vector<Segment> placed_outline(const SheetPiece& piece, double scale) {
  std::vector<Segment> out;
  for (const Segment& s : piece.part.outline().segments()) {
    const Segment on = piece.placing.segment(s);
    out.push_back({scale * on.from, scale * on.to, on.turn, scale * on.centre, scale * on.radius});
  }
  return out;
}

// A name with its middle at `middle`, upright or level: whether all of it lies inside the piece.
struct NamePlace {
  Vec2 middle;
  bool upright = false;
  double height = 0;
};

Vec2 along(const NamePlace& place) { return place.upright ? Vec2(0, 1) : Vec2(1, 0); }

bool inside(const Outline& outline, const NamePlace& place, double length) {
  const Vec2 way = along(place), side = left_of(way);
  for (const double l : {-0.5, -0.25, 0.0, 0.25, 0.5})
    for (const double h : {-0.8, 0.8})
      if (!outline.contains(place.middle + l * length * way + h * place.height * side)) return false;
  return true;
}

// The first place found, largest letters first, from the middle of the piece outward.
std::optional<NamePlace> name_place(const Outline& outline, const std::string& name) {
  const Box2 box = outline.box();
  const Vec2 middle = (box.low + box.high) / 2, half = box.size() / 2;
  const bool tall = half.y() > half.x();
  for (const double height : {kLetters, (kLetters + kLeastLetters) / 2, kLeastLetters})
    for (const double out : {0.0, 0.25, 0.5, 0.7, 0.85})
      for (const bool upright : {tall, !tall})
        for (int turn = 0; turn < 16; ++turn) {
          const Vec2 way = direction(turn * kPi / 8);
          const NamePlace place{middle + out * Vec2(way.x() * half.x(), way.y() * half.y()), upright, height};
          if (inside(outline, place, drawing::text_width(name, height))) return place;
          if (out == 0) break;
        }
  return std::nullopt;
}

void add_name(Drawing& drawing, const std::string& name, const Outline& outline) {
  const auto place = name_place(outline, name);
  if (!place) return;
  const Vec2 foot = place->middle - place->height / 2 * left_of(along(*place));
  drawing.add("NAMES", drawing::Text{foot, name, place->height, drawing::Anchor::middle,
                                     place->upright ? kPi / 2 : 0});
}

void add_piece(Drawing& drawing, const SheetPiece& piece, double scale) {
  const std::vector<Segment> outline = placed_outline(piece, scale);
  drawing.add("PIECES", drawing::Path{outline, true, drawing::tints::kBoard});
  add_name(drawing, piece.name, Outline(outline, piece.name));
}

}  // namespace

Drawing sheet_picture(const CutSheet& sheet) {
  const double scale = kWidth / sheet.size.x();
  Drawing drawing(
      sheet.board, scale * sheet.size,
      {{"BOARD", 0.5, {}, "#000000"}, {"PIECES", 0.25, {}, "#000000"}, {"NAMES", 0.2, {}, "#000000"}});
  drawing.add("BOARD", drawing::Path{drawing::rectangle({{0, 0}, scale * sheet.size}).segments, true,
                                     drawing::tints::kPaper});
  for (const SheetPiece& piece : sheet.pieces) add_piece(drawing, piece, scale);
  return drawing;
}

}  // namespace lamwright::html
