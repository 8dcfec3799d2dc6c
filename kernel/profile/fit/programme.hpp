// Starts for the fit by dynamic programming: over all ways to set joints on a grid, tangent chains of least
// squares for every count of runs.
#pragma once
#include "kernel/profile/fit/grid.hpp"

namespace lamwright::fitting {

struct Start {
  Path path;
  double squares = 0;  // to first order
};

// starts[n]: up to `keep` chains of n runs, the best first; empty where none keeps the bound. Each chain is
// solved for exactly, to first order about the frames, as the value of a chain that ends at a joint is a
// quadratic form of distance and direction there; of the chains that end at the same joint with the same
// count only the best few are followed.
std::vector<std::vector<Start>> programme(const Moments& moments, const Grid& grid, double bound,
                                          std::size_t most_runs, std::size_t keep);

}  // namespace lamwright::fitting
