#include "kernel/mechanics/belt.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright {

double strap_tension(double left, double from_left, double right, double from_right, double mu) {
  return std::max(left * std::exp(-mu * from_left), right * std::exp(-mu * from_right));
}

double strap_pressure(double tension, double curvature, double pitch) {
  return curvature > 0 ? tension * curvature / pitch : 0;
}

}  // namespace lamwright
