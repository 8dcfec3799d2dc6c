// The flat sheets that a pack takes, as they are cut: plies, cover sheets and what lies on the contact edges
// in one sheet.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "exporters/drawing/table.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright::drawing {

// Sheets that are cut alike. The girth direction lies along the first edge.
struct BlankFigure {
  std::string name;  // "plies 1 to 3, 5"
  std::string material;
  double thickness = 0;
  double length = 0;  // round the curve
  double width = 0;
  std::optional<double> grain = std::nullopt;  // radians from the girth direction; none where it is no matter
  double trim = 0;                             // 0: nothing is cut off
  bool pinned = false;                         // locating pins go through
  bool ply = false;                            // stays in the panel
  int count = 0;
};

// In the order of `pack`: plies of all panels first, then the other sheets of the press.
std::vector<BlankFigure> blank_figures(const PressPlan& plan, const std::vector<PackSheet>& pack);

// "along", "across", "30°".
std::string grain_text(double grain);

// Plies numbered from the inner face, then the other sheets: material, thickness, grain, girth at its own
// middle, cut length, width, count over all panels.
Table pack_table(const std::vector<PackSheet>& pack);

// Where a locating pin goes through the flat pack: from the middle of the girth, positive to the right, and
// from the near edge.
struct FlatPin {
  double from_middle = 0;
  double from_edge = 0;
  double diameter = 0;
};
std::vector<FlatPin> flat_pins(const PressPlan& plan);
Table pin_table(const std::vector<FlatPin>& pins);

}  // namespace lamwright::drawing
