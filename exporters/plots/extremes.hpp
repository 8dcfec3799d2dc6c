// Signs and values of the least and the greatest pressure in a map.
#pragma once
#include "exporters/plots/axes.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright::plots {

inline constexpr double kExtremeSign = 1.6;  // radius on paper, mm

// A circle at each place of the finished panel, a minus or a plus in it, the value beside it on a plate.
void add_extremes(drawing::Drawing& drawing, const Field& field, const PressPlan& plan,
                  const PressureMap& map, const Reported& reported);

}  // namespace lamwright::plots
