// Where joints may lie while starts are sought.
#pragma once
#include "kernel/profile/fit/moments.hpp"

namespace lamwright::fitting {

// Candidate joints between samples, each with a frame near the curve there: the first before the first
// sample, the last behind the last one.
struct Grid {
  std::vector<std::size_t> at;  // the sample behind each joint; rises
  std::vector<Frame> frames;
  std::size_t arcs = 0;  // free arcs, one after the other, that cover all samples within the bound
  double slack = 0;      // how far off a chain may lie since its joints have to be on the grid, mm; mean
};

// Joints lie closer where arcs within `bound` (root mean square, mm) are short; at least `least` in all if
// the samples are as many.
Grid grid_of(const std::vector<Sample>& samples, const Moments& moments, double bound, std::size_t least);

}  // namespace lamwright::fitting
