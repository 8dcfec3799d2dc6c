#include "kernel/profile/fit/blocks.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright::fitting {
namespace {

// The lower triangle only; plain sums, since this is where the time goes.
void add(RunBlock& block, const Distance& distance, double weight) {
  for (int j = 0; j < 4; ++j) {
    const double scaled = weight * distance.slope[j];
    block.g[j] += scaled * distance.value;
    for (int i = j; i < 4; ++i) block.h(i, j) += scaled * distance.slope[i];
  }
  block.squares += weight * distance.value * distance.value;
  block.weight += weight;
}

// Inlined into the loop over all points.
inline Distance told(const Seen& point, double k) {
  const double across = 1 + k * point.left, along = k * point.ahead;
  const double root = std::sqrt(across * across + along * along), share = 1 / root, half = 1 / (1 + root);
  const double square = point.ahead * point.ahead + point.left * point.left;
  const double value = (2 * point.left + k * square) * half;
  const double bent = (across * point.left + along * point.ahead) * share;
  return {value, {-along * share, -across * share, -point.ahead * share, (square - value * bent) * half}};
}

}  // namespace

Distance distance_and_slope(const Seen& point, double curvature) { return told(point, curvature); }

Blocks blocks_of(const Path& path, const std::vector<Sample>& samples) {
  Follower follower(path);
  Blocks out;
  out.runs.resize(path.runs.size());
  for (const Sample& sample : samples) {
    const std::size_t run = follower.run_of(sample.at);
    const Distance distance = told(follower.seen(sample.at), path.runs[run].curvature);
    add(out.runs[run], distance, sample.weight);
    out.greatest = std::max(out.greatest, std::abs(distance.value));
  }
  for (RunBlock& block : out.runs) {
    block.h = block.h.selfadjointView<Eigen::Lower>();
    out.squares += block.squares;
    out.weight += block.weight;
  }
  return out;
}

}  // namespace lamwright::fitting
