#include "kernel/mechanics/screw.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"

namespace lamwright {

double withdrawal_wood(double gravity, double diameter, double length) {
  return 108.25 * gravity * gravity * diameter * length;
}

double withdrawal_board(double gravity, double diameter, double length, double factor) {
  ensure(length > diameter / 3, "a screw holds behind its tip");
  return factor * std::sqrt(diameter) * std::pow(length - diameter / 3, 1.25) * gravity * gravity;
}

double withdrawal_en1995(double diameter, double length, double density) {
  const double strength = 0.52 * std::pow(diameter, -0.5) * std::pow(length, -0.1) * std::pow(density, 0.8);
  return strength * diameter * length * std::min(diameter / 8, 1.0);
}

double splitting_en1995(double width, double depth, double edge) {
  ensure(edge > 0 && edge < depth, "a bore lies in its beam");
  return 14 * width * std::sqrt(edge / (1 - edge / depth));
}

double embedment_timber(double diameter, double density) { return 0.082 * (1 - 0.01 * diameter) * density; }

double embedment_plywood(double diameter, double density) { return 0.11 * (1 - 0.01 * diameter) * density; }

double embedment_board(double diameter, double thickness) {
  return 50 * std::pow(diameter, -0.6) * std::pow(thickness, 0.2);
}

}  // namespace lamwright
