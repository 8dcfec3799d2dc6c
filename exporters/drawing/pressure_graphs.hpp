// Curves beside a pressure map: the mean along the girth above it, the spread along the width on its right.
#pragma once
#include "exporters/drawing/pressure_map_view.hpp"

namespace lamwright::drawing {

inline constexpr double kMeanHeight = 20;   // of the curve along the girth, mm on paper
inline constexpr double kMeanTitle = 5;     // above it
inline constexpr double kSpreadWidth = 27;  // of the curve along the width
inline constexpr double kSpreadGap = 9;     // between map and that curve

// Greatest pressure that the upper curve's axis goes to.
double mean_axis_top(const PressureMap& map);
// Where the curve's axis lies and how high it is for `pressure`, on paper.
Vec2 mean_point(const PressureView& view, double girth, double pressure);
void add_mean_curve(Drawing& drawing, const PressureView& view);

// Pressure under the straps over its own mean; nothing is drawn where none is known.
void add_spread_curve(Drawing& drawing, const PressureView& view);

}  // namespace lamwright::drawing
