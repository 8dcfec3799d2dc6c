// The pack and what lies beside it as an elastic bed.
#pragma once
#include <vector>

namespace lamwright {

// One material of the pack or the cauls, square to the curve. Both figures above 0.
struct BedLayer {
  double thickness = 0;  // mm
  double modulus = 0;    // across the grain, MPa
};

// Stiffness in N/mm3 of layers in series (thickness over modulus) with `compliance` (mm/MPa) on top. Throws
// Error (internal) when there is nothing that gives way.
double bed_stiffness(const std::vector<BedLayer>& layers, double compliance);

// Modulus of hardwood across the grain, MPa: E_90,mean of class D40, EN 338:2016 Table 3, from memory.
inline constexpr double kHardwoodAcross = 870;

}  // namespace lamwright
