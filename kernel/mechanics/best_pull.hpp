// Pulls of a two-part press compared: how evenly each seats the upper half, and which does so best.
#pragma once
#include <cmath>
#include <optional>

#include "kernel/mechanics/seating.hpp"

namespace lamwright {

// A pull and the pressures it makes, each as a multiple of pull / chord; 0 when no pressure balances it.
struct PullChoice {
  double axis = 0;  // from the chord's normal, radians, positive: the axis' upper end leans right
  double at = 0;    // of the pull line from the chord's middle, square to the axis, right positive, mm
  double least = 0, mean = 0, greatest = 0;  // over the girth; lifted stretches count as 0
  // No stretch lifts or is left without pressure.
  bool presses() const { return least > 1e-6; }
  double evenness() const { return mean > 0 ? least / mean : 0; }  // 1 is even, 0 where something lifts
  // Infinite where no pressure balances it.
  double spread() const { return mean > 0 ? (greatest - least) / mean : INFINITY; }
};

// Whether `a` presses more evenly than `b`: all over comes before the spread.
bool more_even(const PullChoice& a, const PullChoice& b);

// As `seat`, in multiples of pull / chord. `level`: the line with its chord level.
PullChoice pull_choice(const Profile& level, double axis, double at);

// The position with the least spread of pressure for a given axis, of those that press all over if there are
// any (then 1e-4 of their range inside its ends, where a stretch would begin to lift); of those that
// the bed balances otherwise, found between places a hundredth of their range apart. Infinite spread when it
// balances none.
PullChoice best_position(const Profile& level, double axis);

// The most even pull between the axes `from` and `to`. Where one presses all over it is the least spread of
// those; otherwise found between axes a fortieth of the range apart. Nothing for a single arc or a single
// flat, where any balanced pull presses alike.
std::optional<PullChoice> best_pull(const Profile& level, double from, double to);

}  // namespace lamwright
