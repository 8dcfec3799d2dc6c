// Bars of exactly 100 mm, across and up, that prove the size of a print or of a file read in.
#pragma once
#include <functional>
#include <optional>
#include <vector>

#include "exporters/drawing/operations.hpp"

namespace lamwright::drawing {

inline constexpr const char* kCheckPen = layers::kCheck;

// The first lower left corner that `test` takes, of boxes of that size on a grid of `step` within the field:
// from the lowest up, in each row from the left. The last one: the other way round.
using PlaceTest = std::function<bool(const Vec2& corner)>;
std::optional<Vec2> first_place(const Box2& field, const Vec2& size, double step, const PlaceTest& test);
std::optional<Vec2> last_place(const Box2& field, const Vec2& size, double step, const PlaceTest& test);
inline constexpr double kPlaceStep = 2.5;  // on a printed page

// On a printed page: each bar on its own, with strokes across its ends and its length in words, drawn with
// kCheckPen within the field (at least 105 each way): in the first place clear of all that is drawn; where
// there is none they cross as little as can be.
void add_check_bars(Drawing& drawing, const Box2& field);

// In a file to cut from: both from one corner, with their figure.
std::vector<Operation> corner_bars(const Vec2& corner);

inline bool anywhere(const Vec2&) { return true; }

// The first place in the drawing's sheet, `edge` inside it, where such bars and their figure lie on nothing
// drawn and each bar is `allowed`. Nothing when there is none.
struct BarSearch {
  double edge = 6;
  double step = 10;
  double clear = 2;               // beside each bar
  PlaceTest possible = anywhere;  // a quick no for corners whose bars are not allowed; asked row by row
  std::function<bool(const Segment& bar)> allowed;
};
std::optional<Vec2> bars_corner(const Drawing& drawing, const BarSearch& search);

}  // namespace lamwright::drawing
