// Units: inside the program everything is mm, N, MPa and radians. Conversions live here alone, from exact
// factors.
#pragma once
#include <numbers>

namespace lamwright {

inline constexpr double kMmPerInch = 25.4;             // exact: international yard and pound agreement, 1959
inline constexpr double kMmPerFoot = 12 * kMmPerInch;  // exact: 12 inches
inline constexpr double kNewtonPerKgf = 9.80665;       // exact: standard gravity, CGPM 1901
inline constexpr double kKgPerPound = 0.45359237;      // exact: 1959
inline constexpr double kNewtonPerLbf = kKgPerPound * kNewtonPerKgf;  // 4.4482216152605, exact
// Exact by definition, rounded 0.006894757.
inline constexpr double kMpaPerPsi = kNewtonPerLbf / (kMmPerInch * kMmPerInch);
static_assert(kMmPerFoot > 304.7999 && kMmPerFoot < 304.8001);
static_assert(kNewtonPerLbf > 4.448221615 && kNewtonPerLbf < 4.448221616);
static_assert(kMpaPerPsi > 0.006894757 && kMpaPerPsi < 0.006894758);

inline constexpr double kPi = std::numbers::pi;                             // half a turn in radians
constexpr double radians(double degrees) { return degrees * (kPi / 180); }  // exact to rounding
constexpr double degrees(double radians) { return radians * (180 / kPi); }  // not wrapped to one turn

}  // namespace lamwright
