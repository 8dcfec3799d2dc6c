// Cutting stock in whole numbers. A kerf is added to every piece and to the bar, so that it need not be
// thought of.
#pragma once
#include <cstdint>
#include <numeric>
#include <vector>

namespace lamwright {

// Lengths and costs as whole numbers, so that "fits" and "cheaper" are never a matter of rounding.
using Whole = std::int64_t;

struct BarItem {
  Whole size = 0;  // with one kerf
  int count = 0;
  Whole left_out = kNever;  // cost of one that is not cut; kNever: it must be
  static constexpr Whole kNever = -1;
};

struct BarKind {
  Whole room = 0;  // with one kerf and the tolerance of a fit
  Whole cost = 0;
  int count = 0;         // at most the number of pieces
  bool counted = false;  // false: as many as are wanted
};

struct BarProblem {
  std::vector<BarItem> items;  // longest first
  std::vector<BarKind> kinds;  // longest first
};

struct Taken {
  int item = 0;
  int count = 0;
};

// What is cut from one bar, longest first.
struct BarPattern {
  int kind = kLeftOut;
  std::vector<Taken> take;
  static constexpr int kLeftOut = -1;  // not a bar: the piece is left out
};

// What is still to be cut and what it may be cut from.
struct BarState {
  std::vector<int> demand;
  std::vector<int> bars;
};

// Prices of items and of the counted kinds' bars. No cutting of a state costs less than `least` of it, as
// long as no pattern's items are worth more than its bar's cost and price.
struct BarPrices {
  std::vector<double> item;
  std::vector<double> bar;
  double least(const BarState& state) const;
};

BarState start_of(const BarProblem& problem);
// The state after `pattern` has been cut.
BarState after(BarState state, const BarPattern& pattern);
bool nothing_left(const BarState& state);
Whole load(const BarProblem& problem, const BarPattern& pattern);
Whole cost(const BarProblem& problem, const BarPattern& pattern);
Whole cost(const BarProblem& problem, const std::vector<BarPattern>& patterns);

}  // namespace lamwright
