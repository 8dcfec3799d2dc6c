#include "exporters/drawing/piece_name.hpp"

#include <algorithm>
#include <array>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kRoom = 2;
constexpr std::array<double, 5> kHeights{10, 7, 5, kTextHeight, kSmallHeight};

struct Place {
  Vec2 middle;
  double away;
};

// Points of a grid over the part, nearest to its centre first.
std::vector<Place> places(const SheetPiece& piece) {
  constexpr double kGrid = 6;
  const Outline& outline = piece.part.outline();
  const Box2 box = outline.box();
  std::vector<Place> out{{piece.placing.point(outline.centroid()), 0}};
  for (double y = box.low.y() + kGrid / 2; y < box.high.y(); y += kGrid)
    for (double x = box.low.x() + kGrid / 2; x < box.high.x(); x += kGrid)
      out.push_back({piece.placing.point({x, y}), rounded((Vec2(x, y) - outline.centroid()).norm(), 6)});
  std::stable_sort(out.begin(), out.end(), [](const Place& a, const Place& b) { return a.away < b.away; });
  return out;
}

Text written(const std::string& name, const Vec2& middle, double height, double angle) {
  return {middle - height / 2 * left_of(direction(angle)), name, height, Anchor::middle, angle};
}

bool cut(const Operation& operation) {
  return operation.layer == layers::kOutline || std::holds_alternative<Circle>(operation.shape);
}

class NameSearch {
 public:
  NameSearch(const SheetPiece& piece, const std::vector<Operation>& drawn)
      : piece_(piece), places_(places(piece)), drawn_(laid_out({}, {0, 0}, drawn)) {}

  std::optional<Text> found() const {
    for (const double height : kHeights)
      for (const double angle : {0.0, kPi / 2})
        if (const auto text = found(height, angle)) return text;
    return std::nullopt;
  }

 private:
  std::optional<Text> found(double height, double angle) const {
    for (const Place& place : places_) {
      const Text text = written(piece_.name, place.middle, height, angle);
      if (inside(text) && drawn_.taken().free(grown(text_box(text), kRoom))) return text;
    }
    return std::nullopt;
  }

  // A box that touches no line and has one corner inside the outline lies inside it.
  bool inside(const Text& text) const {
    return piece_.part.outline().contains(own_point(piece_.placing, text_corners(text)[0]));
  }

  const SheetPiece& piece_;
  std::vector<Place> places_;
  Drawing drawn_;
};

}  // namespace

std::optional<Operation> piece_name(const SheetPiece& piece, const std::vector<Operation>& drawn) {
  std::vector<Operation> cuts;
  std::copy_if(drawn.begin(), drawn.end(), std::back_inserter(cuts), cut);
  auto text = NameSearch(piece, drawn).found();
  if (!text) text = NameSearch(piece, cuts).found();
  if (!text) return std::nullopt;
  return Operation{layers::kLabel, *text};
}

}  // namespace lamwright::drawing
