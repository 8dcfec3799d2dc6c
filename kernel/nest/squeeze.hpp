// Pieces moved together, all at once: what laying them one after another cannot do.
#pragma once
#include <functional>

#include "kernel/nest/sheet_row.hpp"

namespace lamwright::nesting {

struct SqueezeSpec {
  const std::vector<Shape>& shapes;
  Vec2 board{0, 0};            // inside the margins, units of the grid
  std::int64_t effort = 0;     // edges looked at until the search ends
  std::function<void()> step;  // called between rounds
};

// The right end of the last sheet is moved in by small steps, until the sheet is gone if need be; pieces that
// then overlap are moved apart, also onto other sheets. Never longer than `start`, which keeps its distances.
Sheets squeezed(const Sheets& start, const SqueezeSpec& spec, NoFit& no_fit);

// Right end of what lies there.
double reach(const std::vector<Laid>& laid, const std::vector<Shape>& shapes);

}  // namespace lamwright::nesting
