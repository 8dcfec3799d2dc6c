// What every solid is held against before it leaves the builder. Internal to kernel/solid.
#pragma once
#include "kernel/part/part.hpp"

class TopoDS_Shape;

namespace lamwright {

// `faces` is exact, or with `cut` bores the least (a mouth may part a face shorter than itself). The volume
// must agree with the part's closed form to 1e-9 of it, with cut bores to 1e-7: mouths are then spline
// curves, and the closed form of a mouth is a sum over strips. Throws Error (internal) naming the part, with
// both figures.
struct Expected {
  int faces = 0;
  bool cut = false;
};
void check_solid(const TopoDS_Shape& solid, const Part& part, const Expected& expected);

}  // namespace lamwright
