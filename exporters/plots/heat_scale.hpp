// The tints of a pressure map: their bounds in the units of a report, and the scale beside the map.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/pressure_steps.hpp"
#include "exporters/plots/ticks.hpp"
#include "kernel/panel/materials.hpp"

namespace lamwright::plots {

class HeatScale {
 public:
  // `greatest` in MPa; bounds are round in `unit`.
  HeatScale(double greatest, const AxisUnit& unit);

  int count() const { return steps_.count(); }
  double bound(int i) const { return steps_.bound(i) * unit_.size; }  // MPa
  double top() const { return bound(count()); }
  std::string tint(int i) const;

  // Boxes one above the other with their bounds, the lowest for what is not pressed; the glue's range as a
  // bracket on their left. Fills `box`, whose top is the uppermost bound's.
  void add(drawing::Drawing& drawing, const Box2& box, const Glue& glue) const;
  // Height on paper of a pressure beside boxes that fill `box`.
  double height(double pressure, const Box2& box) const;

 private:
  void add_glue(drawing::Drawing& drawing, const Box2& box, const Glue& glue) const;

  AxisUnit unit_;
  drawing::PressureSteps steps_;
};

}  // namespace lamwright::plots
