// Curves through many points, with those alone that show.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::plots {

// On paper, mm. Points that lie within a hundredth of the line between their neighbours are left out.
drawing::Path traced(const std::vector<Vec2>& points);
// The same, closed and filled; empty where nothing is left to fill.
drawing::Path filled(const std::vector<Vec2>& points, const std::string& fill);

}  // namespace lamwright::plots
