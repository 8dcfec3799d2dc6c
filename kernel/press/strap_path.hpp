// Straps drawn over one mould, as lines in the plane of their former.
#pragma once
#include <vector>

#include "kernel/press/plan.hpp"
#include "kernel/profile/segment.hpp"

namespace lamwright {

// From the left mark over the top caul to the right mark, each segment beginning where the one before ends:
// round a roller where there is one, straight across a hollow of the caul, and straight from end to end where
// it does not lie on a caul. Of a closure without a loop.
std::vector<Segment> strap_path(const PressPlan& plan, const Closure& closure);

// Where a strap's free run begins: the roller, else the top caul.
Vec2 run_start(const StrapEnd& end);

// Length along a strap, before its mark, that its ratchet needs; 0 without one.
double ratchet_space(const PressPlan& plan, const Closure& closure);

}  // namespace lamwright
