#include "kernel/reading/dxf/sweep.hpp"

#include <cmath>

#include "shared/units.hpp"

namespace lamwright::dxf_reading {
namespace {

// Angles written with 9 decimals of a degree or more.
constexpr double kSameAngle = radians(1e-9);

}  // namespace

Sweep sweep(double from, double to) {
  double turn = std::fmod(to - from, 2 * kPi);
  if (turn < 0) turn += 2 * kPi;
  if (turn < kSameAngle || turn > 2 * kPi - kSameAngle) turn = 2 * kPi;
  return {std::remainder(from, 2 * kPi), turn};
}

}  // namespace lamwright::dxf_reading
