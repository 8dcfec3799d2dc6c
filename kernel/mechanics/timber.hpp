// Strength of structural timber for short loads.
#pragma once
#include <algorithm>
#include <cmath>

namespace lamwright {

// Design value, MPa, of a characteristic strength under a short-term load in service class 1 or 2: times
// k_mod 0.9 (EN 1995-1-1 table 3.1, solid timber), over gamma_M 1.3 (table 2.3).
inline constexpr double kShortTerm = 0.9, kTimberFactor = 1.3;
// Of a characteristic strength; both in MPa.
inline double design_strength(double characteristic) { return characteristic * kShortTerm / kTimberFactor; }

// Size factor k_h = min((150 / h)^0.2, 1.3) on the bending and tension strength of solid timber less than 150
// deep with rho_k up to 700 kg/m3, else 1: EN 1995-1-1 3.2 (3.1). h in mm, > 0.
inline double size_factor(double depth, double density) {
  if (density > 700 || depth >= 150) return 1;
  return std::min(std::pow(150 / depth, 0.2), 1.3);
}

}  // namespace lamwright
