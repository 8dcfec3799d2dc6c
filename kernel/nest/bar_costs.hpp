// Which costs a set of bars can have at all.
#pragma once
#include <optional>
#include <vector>

#include "kernel/nest/bar_problem.hpp"

namespace lamwright {

struct BarLength {
  Whole length = 0;          // above 0
  std::optional<int> count;  // not given: as many as are wanted
};

// The cost of a set of bars is (sum of lengths) * per_length + number of bars, lengths in their greatest
// common measure: less length always counts before fewer bars.
class CostSteps {
 public:
  // lengths: of every kind of bar; most_bars: more are never used.
  CostSteps(std::vector<BarLength> lengths, int most_bars);
  // Every whole number is a cost.
  CostSteps() = default;

  Whole cost_of(Whole length) const { return length / measure_ * per_length_ + 1; }
  Whole length_of(Whole cost) const { return cost / per_length_ * measure_; }

  // The least possible cost that is not below `cost`.
  Whole not_below(Whole cost) const;
  // No possible cost lies between this and `cost`; below 0 when there is none.
  Whole below(Whole cost) const;

 private:
  // How many bars make up a length; most < fewest: none do.
  struct Bars {
    int fewest = 1;
    int most = 0;
    bool possible() const { return fewest <= most; }
  };
  Bars bars_of(Whole length) const;
  static Bars either(const Bars& a, const Bars& b);
  static Bars with(const Bars& before, int more);
  void add_any_number(Whole length);
  void add_up_to(Whole length, int count);

  Whole measure_ = 1;
  Whole per_length_ = 1;
  Whole longest_ = 0, shortest_ = 0;
  std::vector<Bars> table_;  // for short lengths
};

}  // namespace lamwright
