// The search for the fewest runs.
#pragma once
#include <functional>

#include "kernel/profile/fit/refine.hpp"

namespace lamwright::fitting {

struct Problem {
  std::vector<Sample> points;  // what is fitted and what has to keep the tolerance
  std::vector<Sample> means;   // fewer, for the search
  Ties ties;
  double tolerance = 0.5;
  double sigma = 0;  // of a point
  bool levelled =
      false;  // the points have no noise: their greatest distance counts, not that of least squares
};

// A path and the points it is of least squares to, weighted as they were for it.
struct Found {
  Refined fit;
  std::vector<Sample> points;
};

Problem problem(const std::vector<Vec2>& points, const Ties& ties, double tolerance, double sigma);

// The path of the fewest runs that has no point beyond the tolerance: of least squares, or levelled. Every
// count is tried from several starts, and a path that keeps the tolerance is proven by merging each pair of
// its runs. None when no count the points can tell (two unknowns a run and one) does.
std::optional<Found> fewest(const Problem& problem);

// The least-squares path of exactly n runs; none when the points lead to fewer.
std::optional<Found> exactly(const Problem& problem, std::size_t n);

// The least-squares path from a start given.
std::optional<Found> from_start(const Problem& problem, const Path& start);

// The path with runs made straight where that raises the sum of squares by less than 9 sigma^2 each and keeps
// the tolerance; never two in a row. straight tells which.
struct Straightened {
  Refined fit;
  std::vector<bool> straight;
};
Straightened straightened(const Problem& problem, const Refined& fit);

}  // namespace lamwright::fitting
