// Strength of structural timber for short loads.
#pragma once

namespace lamwright {

// Design value, MPa, of a characteristic strength under a short-term load in service class 1 or 2: times
// k_mod 0.9 (EN 1995-1-1 table 3.1, solid timber), over gamma_M 1.3 (table 2.3).
inline constexpr double kShortTerm = 0.9, kTimberFactor = 1.3;
inline double design_strength(double characteristic) { return characteristic * kShortTerm / kTimberFactor; }

}  // namespace lamwright
