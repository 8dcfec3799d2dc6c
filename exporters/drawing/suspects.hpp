// Measured points that look wrong, as sheets show and name them.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "kernel/profile/fit/fit.hpp"

namespace lamwright::drawing {

inline constexpr double kRing = 1.6;  // radius of the ring round such a point, on paper

// As people count points: from 1.
std::string point_number(std::size_t index);
inline constexpr std::size_t kMostApart =
    50;  // suspects that are circled; more are shown as other points are

// At most so many of the suspects, those farthest from the runs, in the order of the points.
std::vector<std::size_t> farthest_suspects(const FitResult& fit, std::size_t most);
// "Look wrong, left out; measure again: points 17 (2.4 outside), 31 (0.8 inside)."  Those farthest off where
// there are very many.
std::string suspects_text(const FitResult& fit);
// The fit's notes without those that tell of a single suspect, which suspects_text() does.
std::vector<std::string> other_notes(const FitResult& fit);

// Of the points that are no suspects: size of the greatest residual, root of the mean square; 0 where there
// are none.
struct KeptFigures {
  double greatest = 0;
  double rms = 0;
};
KeptFigures kept_figures(const FitResult& fit);

void add_ring(Drawing& drawing, const Vec2& middle);

}  // namespace lamwright::drawing
