// The key of a pressure map: its greys with their bounds, the glue's range, and what the lines mean.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/pressure_steps.hpp"
#include "kernel/panel/materials.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

class PressureKey {
 public:
  PressureKey(const PressPlan& plan, const Glue& glue, const PressureSteps& steps);

  Vec2 size() const;
  // `corner` is the upper left one.
  void add(Drawing& drawing, const Vec2& corner) const;
  // Height of a pressure on the scale of greys, above the foot of the lowest of them.
  double height(double pressure) const;
  // Whether some of the glue's range lies within the greys.
  bool reaches_glue() const { return glue_.pressure_low < steps_.top(); }

 private:
  void add_greys(Drawing& drawing, const Vec2& foot) const;
  void add_glue(Drawing& drawing, const Vec2& foot) const;
  void add_signs(Drawing& drawing, const Vec2& corner) const;
  void add_lines(Drawing& drawing, const Vec2& corner) const;

  const PressPlan& plan_;
  const Glue& glue_;
  PressureSteps steps_;
};

// "0.2 to 1 MPa"
std::string glue_range(const Glue& glue);

}  // namespace lamwright::drawing
