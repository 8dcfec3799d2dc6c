// Measured points and the runs through them, to scale.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/level_curve.hpp"
#include "kernel/profile/fit/fit.hpp"

namespace lamwright::drawing {

// Indices of points that lie far enough from one another on paper to be told apart, some hundreds at most;
// suspects that are circled always, and no other point within their rings.
std::vector<std::size_t> points_to_draw(const std::vector<Vec2>& points, const FitResult& fit, double scale);

struct Measured {
  bool all_points = true;    // else some of them only
  std::size_t numbered = 1;  // as add_run_numbers() returns it; 1 where runs are named
};
// `curve` is the fit's profile laid level. Points as small rings, suspects circled and, where there is room
// within the field, numbered; runs named or numbered. No inflections: their rings could be taken for those of
// suspects.
Measured add_measured(Drawing& drawing, const LevelCurve& curve, const FitResult& fit,
                      const std::vector<Vec2>& points, const View& view, const Box2& field);

// One ring of them, for the legend.
void add_measured_point(Drawing& drawing, const Vec2& at);

}  // namespace lamwright::drawing
