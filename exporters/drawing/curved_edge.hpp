// The curved edge of a flat part: where it lies in the outline, and the points that it is plotted by.
#pragma once
#include <optional>
#include <vector>

#include "exporters/drawing/table.hpp"
#include "kernel/part/outline.hpp"

namespace lamwright::drawing {

enum class EdgeSide { upper, lower };  // of the wood

// The longest chain of tangent lines and arcs of an outline on that side of the wood, left to right. Empty
// where the outline has none.
std::vector<Segment> curved_edge(const Outline& outline, EdgeSide side = EdgeSide::upper);

// Along the edge: its two ends, where X is a multiple of `step`, and where it is steeper than 45 degrees also
// where Y is. mm; step > 0. Points nearer than 1e-6 to one another are one.
std::vector<Vec2> edge_points(const std::vector<Segment>& edge, double step);

// Reflected in the line X = 0 it is the same edge.
bool mirror_alike(const std::vector<Segment>& edge);

// Steps of a table of points: 50, less on an edge too short for five of them.
double point_step(const std::vector<Segment>& edge);

// Where heights are measured from when that is not Y = 0.
struct HeightsFrom {
  double level = 0;
  bool downward = false;
  std::string head;  // of their column
};

// Run, radius, centre, where it begins, length, turn; a last row says where the edge ends.
Table arc_table(const std::vector<Segment>& edge);
// X and Y of the edge's points, a tenth each; an edge that is alike on both sides is listed for one.
Table point_table(const std::vector<Segment>& edge, double step, const std::optional<HeightsFrom>& from);

}  // namespace lamwright::drawing
