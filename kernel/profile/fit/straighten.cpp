#include <algorithm>
#include <cmath>
#include <numeric>

#include "kernel/profile/fit/search.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::fitting {
namespace {

constexpr double kNoBend = 9;  // sigma^2 by which a bend has to lower the squares: three standard deviations

constexpr double kSlightBow = 0.1;  // share of the tolerance below which the bow of an exact run is none
constexpr double kFlattest = 1e5;   // mm; nobody draws or makes a flatter bend
constexpr Effort kTrial{20, 1e-8};

// A bend that is none, whatever the squares say.
bool slight(const Run& run, const Problem& problem) {
  const double k = std::abs(run.curvature);
  if (k * kFlattest < 1) return true;
  return problem.sigma == 0 && k * run.length * run.length / 8 < kSlightBow * problem.tolerance;
}

// Runs in order of how little they bend, measured by how well their curvature is known.
struct Order {
  std::vector<std::size_t> runs;
  std::vector<double> raise;  // of the squares when the run is made straight, to first order
};

Order by_bend(const Refined& fit, const Ties& ties) {
  const Spread spread = spread_of(fit, ties, {});
  Order out{std::vector<std::size_t>(fit.path.runs.size()), {}};
  for (std::size_t i = 0; i < fit.path.runs.size(); ++i)
    out.raise.push_back(std::pow(fit.path.runs[i].curvature, 2) / std::max(spread.curvature[i], 1e-300));
  std::iota(out.runs.begin(), out.runs.end(), 0);
  std::sort(out.runs.begin(), out.runs.end(), [&](auto a, auto b) { return out.raise[a] < out.raise[b]; });
  return out;
}

Refined with_lines(Path path, const Problem& problem, const std::vector<bool>& straight,
                   const Effort& effort) {
  for (std::size_t i = 0; i < path.runs.size(); ++i)
    if (straight[i]) path.runs[i].curvature = 0;
  return refined(path, problem.points, problem.ties, straight, effort);
}

bool beside_line(const std::vector<bool>& straight, std::size_t i) {
  return (i > 0 && straight[i - 1]) || (i + 1 < straight.size() && straight[i + 1]);
}

}  // namespace

Straightened straightened(const Problem& problem, const Refined& fit) {
  const double sigma = std::max(problem.sigma, kSamePoint);
  const double allowed = kNoBend * sigma * sigma;
  Straightened out{fit, std::vector<bool>(fit.path.runs.size(), false)};
  const Order order = by_bend(fit, problem.ties);
  for (const std::size_t i : order.runs) {
    const bool none = slight(out.fit.path.runs[i], problem);
    if ((order.raise[i] > 2 * allowed && !none) || beside_line(out.straight, i)) continue;
    out.straight[i] = true;
    Refined trial = with_lines(out.fit.path, problem, out.straight, kTrial);
    out.straight[i] = trial.sound() && trial.blocks.greatest <= problem.tolerance &&
                      (none || trial.blocks.squares - out.fit.blocks.squares < allowed);
    if (out.straight[i]) out.fit = std::move(trial);
  }
  Refined last = with_lines(out.fit.path, problem, out.straight, {});
  // A levelled path keeps the tolerance before its weights have settled, and may not after.
  if (last.sound() && last.blocks.greatest <= std::max(problem.tolerance, out.fit.blocks.greatest))
    out.fit = std::move(last);
  return out;
}

}  // namespace lamwright::fitting
