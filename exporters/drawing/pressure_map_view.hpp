// The pressure on the blank's outer face, the face laid flat: girth to the right, width up.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/pressure_steps.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright::drawing {

// `view` takes (girth station, width station) of the outer face to paper.
struct PressureView {
  const PressPlan& plan;
  const PressureMap& map;
  View view;
  PressureSteps steps;

  double girth() const { return map.girth.back(); }
  double width() const { return plan.panel.blank_width(); }
  Box2 box() const { return view.paper(Box2{{0, 0}, {girth(), width()}}); }  // on paper
};

// Room round the map for what stands beside it, mm on paper.
inline constexpr double kStationsLeft = 20;
inline constexpr double kStationsBelow = 23;
inline constexpr double kAboveMap = 6;

// Where the blank's outer face is pressed most inside the trim; the first such place.
Vec2 greatest_place(const PressPlan& plan, const PressureMap& map);
// Girth stations on the outer face at which the runs of the neutral line begin, and the end.
std::vector<double> outer_joints(const PressPlan& plan);

// Bands of equal pressure, trim lines, joints of runs, formers, and straps as wide strokes past the right
// edge.
void add_pressure_bands(Drawing& drawing, const PressureView& view);
// Running dimensions on the left and below with the names of runs.
void add_pressure_stations(Drawing& drawing, const PressureView& view);

// Signs of the least (a minus) and the greatest pressure (a plus) of the finished panel.
enum class Extreme { least, greatest };
inline constexpr double kSignRadius = 1.8;
void add_sign(Drawing& drawing, const Vec2& at, Extreme extreme);
// At their places; signs that would cover one another stand beside them, each tied to a dot at its own.
void add_extremes(Drawing& drawing, const PressureView& view);

}  // namespace lamwright::drawing
