// Finding the paper and scale for what a sheet has to show.
#pragma once
#include <functional>
#include <optional>
#include <vector>

#include "exporters/drawing/section_dimensions.hpp"
#include "exporters/drawing/sheet.hpp"
#include "exporters/drawing/view.hpp"

namespace lamwright::drawing {

// Room that a view with its dimensions takes on paper.
Vec2 room_of(const Box2& model, double scale, const Margins& margins);
// Lower left corner of such a room to the view that fills it.
View view_in(const Box2& model, double scale, const Margins& margins, const Vec2& corner);
Box2 room_at(const Vec2& corner, const Vec2& size);

struct Choice {
  Paper paper;
  Scale scale;
  int arrangement = 0;
};

// Least scale at which what is cut to is still seen well.
inline constexpr double kReadable = 1.0 / 5;

// Which scales are tried.
struct ScaleRange {
  double readable = kReadable;  // down to this one larger paper is avoided
  double largest = 1;
};

// The first choice for which `fits` holds: down to the scale `readable` the smallest paper that will do at
// its largest scale, beyond that the largest scale; in each the first arrangement. The last of all when none
// fits.
Choice choose(const std::vector<Paper>& papers, int arrangements,
              const std::function<bool(const Choice&)>& fits, const ScaleRange& range = {});

}  // namespace lamwright::drawing
