// sin(x) / x, which chords and integrals along arcs are made of.
#pragma once
#include <cmath>

namespace lamwright {

// Exact to rounding near 0, so that a line is the limit of an arc.
inline double sinc(double x) { return std::abs(x) < 1e-4 ? 1 - x * x / 6 : std::sin(x) / x; }

}  // namespace lamwright
