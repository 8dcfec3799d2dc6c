// Loose pieces put in order: end to end, doubles left out.
#pragma once
#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright {

struct Chained {
  std::vector<DrawnPiece> pieces;  // in order of travel, each beginning within `join` of the end before
  bool closed = false;
  double largest_gap = 0;   // that was closed, mm
  Vec2 gap_at{0, 0};        // where it is
  std::size_t doubled = 0;  // curves left out since they lie on another
};

// The curves may come in any order and direction; the first keeps its own. Ends within `join` (mm, >= 0) of
// each other meet. Throws Error (geometry), naming points: no curve at all, more than two ends that meet,
// more than one chain left (with the smallest gap between two of them and what to do).
Chained chained(const std::vector<DrawnCurve>& curves, double join);

}  // namespace lamwright
