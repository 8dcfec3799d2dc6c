// Tables of the press as a whole.
#pragma once
#include "exporters/drawing/table.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Girths and chord of the blank as pressed.
Table girth_table(const PressPlan& plan);
// A strap over the pack by its two ends, or the two loops of a press of two moulds.
Table strap_table(const Closure& closure);

// Runs of the neutral line against the pull: angle of their normals, and its cosine. No rows without a pull.
Table run_table(const PressPlan& plan);
// The same in two columns side by side, at most twelve rows high; more runs are counted in the last row.
Table folded_runs(const PressPlan& plan);

}  // namespace lamwright::drawing
