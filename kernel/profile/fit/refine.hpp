// Least squares: the path nearest to the samples, from a start near by (Levenberg-Marquardt).
#pragma once
#include <optional>

#include "kernel/profile/fit/fit.hpp"
#include "kernel/profile/fit/step.hpp"

namespace lamwright::fitting {

// Ends that are known. A known start is the start of the path itself.
struct Ties {
  std::optional<KnownEnd> start, end;

  Freedom freedom() const { return {!start, !(start && start->heading), {}}; }
};

struct Refined {
  Path path;
  Blocks blocks;
  bool valid = true;  // no run has shrunk away or grown round
  double missed = 0;  // of a known end, mm or radians: more than rounding where too few runs can meet it

  bool sound() const { return valid && missed < 1e-6; }
};

// How far the least squares are followed.
struct Effort {
  int rounds = 60;      // solutions of the linear problem
  double fall = 1e-13;  // share of the squares by which a round has to lower them, or it was the last
};

// The known end is met to rounding once the rounds have converged. Runs that want to vanish shrink and are
// told by `valid`.
Refined refined(const Path& start, const std::vector<Sample>& samples, const Ties& ties,
                const std::vector<bool>& straight, const Effort& effort);

// Variances of curvatures and lengths for a unit variance of the samples.
Spread spread_of(const Refined& fit, const Ties& ties, const std::vector<bool>& straight);

}  // namespace lamwright::fitting
