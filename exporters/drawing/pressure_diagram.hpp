// The pressure round a curve as ordinates square to its neutral line, on the outer side.
#pragma once
#include <vector>

#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// How high the greatest pressure stands on paper, mm; less where a hollow would make ordinates cross.
inline constexpr double kHighestOrdinate = 60;

// A plan with `seated`, seen through a view.
class PressureDiagram {
 public:
  PressureDiagram(const PressPlan& plan, const View& view);

  double rise() const { return rise_; }  // mm on paper per MPa; 0 where the bed carries nothing
  double pressure(double station) const;
  // On paper: the point of the neutral line and the end of its ordinate.
  Vec2 foot(double station) const;
  Vec2 tip(double station) const;
  double across(double station) const;  // direction of the ordinates there, radians

  // Stations at most `step` mm of paper apart, with all joints of runs and ends of lifted stretches.
  std::vector<double> stations(double step) const;
  // Girth stretches that carry pressure; all of the girth where nothing is known of it.
  std::vector<Stretch> pressed() const;
  // Outlines over those, on paper: along the ends of the ordinates and back along the line, half a millimetre
  // from point to point.
  std::vector<std::vector<Vec2>> outlines() const;
  // Parallel to the line at the mean pressure.
  std::vector<Segment> mean() const;
  Box2 box() const;  // on paper

 private:
  const PressPlan& plan_;
  View view_;
  double rise_ = 0;
};

}  // namespace lamwright::drawing
