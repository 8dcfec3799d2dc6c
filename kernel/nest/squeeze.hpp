// Pieces of one sheet moved together, all at once: what laying them one after another cannot do.
#pragma once
#include <functional>

#include "kernel/nest/dice.hpp"
#include "kernel/nest/spots.hpp"

namespace lamwright::nesting {

struct SqueezeSpec {
  const std::vector<Shape>& shapes;
  Vec2 board{0, 0};            // inside the margins, units of the grid
  std::int64_t effort = 0;     // edges looked at until the search ends
  std::function<void()> step;  // called between rounds
};

// The right end is moved in by small steps; pieces that then overlap are moved one at a time to where they
// overlap least, overlaps that stay counting for more and more (guided local search, Egeblad, Nielsen and
// Odgaard 2007). Never longer than `start`, which keeps its distances.
std::vector<Laid> squeezed(const std::vector<Laid>& start, const SqueezeSpec& spec, NoFit& no_fit);

// Right end of what lies there.
double reach(const std::vector<Laid>& laid, const std::vector<Shape>& shapes);

}  // namespace lamwright::nesting
