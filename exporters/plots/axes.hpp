// The field of a plot: where values lie on paper, and what stands round it.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/plots/ticks.hpp"

namespace lamwright::plots {

// `box` on paper, mm; values from (left, bottom) to (right, top).
struct Field {
  Box2 box;
  double left = 0, right = 1, bottom = 0, top = 1;

  double x(double value) const { return box.low.x() + box.size().x() * (value - left) / (right - left); }
  double y(double value) const { return box.low.y() + box.size().y() * (value - bottom) / (top - bottom); }
  Vec2 at(double along, double up) const { return {x(along), y(up)}; }
};

// Room on paper beside a field for its numbers and titles, mm.
inline constexpr double kLeftOfField = 15;
inline constexpr double kRightOfField = 8;
inline constexpr double kBelowField = 12;
inline constexpr double kAboveField = 11;
inline constexpr double kTitleAbove = 7;  // base line of the upright axis' title over the field
// Least distance between the numbers of the lower axis.
inline constexpr double kNumberRoom = 18;
inline constexpr double kNumberRoomUp = 8;  // and of the upright one

struct Axis {
  std::vector<Tick> ticks;
  std::string title;  // "girth, mm"
};
// Of a length from 0 to `greatest` over `room` on paper: "girth of the outer face", with its unit.
Axis length_axis(const std::string& what, double greatest, double room, double apart,
                 const Reported& reported);

// Both lines, ticks and numbers; the titles stand below the right end and above the left one.
void add_axes(drawing::Drawing& drawing, const Field& field, const Axis& along, const Axis& up);
// Thin level lines at the ticks, faint enough to be written over: they come last, or add_first_free keeps off
// them.
void add_grid(drawing::Drawing& drawing, const Field& field, const std::vector<Tick>& up);
void add_upright(drawing::Drawing& drawing, const char* pen, const Field& field, double along);

// Runs over the field: lines where they end, names above where there is room for them. `joints` holds where
// each begins and the end of the last; a name may be empty.
struct RunStrip {
  std::vector<double> joints;
  std::vector<std::string> names;
};
void add_runs(drawing::Drawing& drawing, const Field& field, const RunStrip& runs);

// The first of the texts that covers nothing drawn so far, lies in `room` and is added; false where none
// does.
bool add_first_free(drawing::Drawing& drawing, const Box2& room, const std::vector<drawing::Text>& tries);

}  // namespace lamwright::plots
