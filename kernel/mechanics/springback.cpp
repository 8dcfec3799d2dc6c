#include "kernel/mechanics/springback.hpp"

#include <cmath>

#include "shared/error.hpp"

namespace lamwright {

double neutral_height(const std::vector<Lamina>& section) {
  double stiffness = 0, moment = 0;
  for (const Lamina& l : section) {
    stiffness += l.modulus * (l.to - l.from);
    moment += l.modulus * (l.to - l.from) * (l.from + l.to) / 2;
  }
  ensure(stiffness > 0, "a bonded section has stiffness");
  return moment / stiffness;
}

double springback_share(const std::vector<Lamina>& section) {
  const double z = neutral_height(section);
  double loose = 0, bonded = 0;
  for (const Lamina& l : section) {
    const double t = l.to - l.from;
    loose += l.modulus * std::pow(t, 3) / 12;
    bonded += l.modulus * (std::pow(l.to - z, 3) - std::pow(l.from - z, 3)) / 3;
  }
  return loose / bonded;
}

double share_of_test_piece(double form_radius, double part_radius) { return 1 - form_radius / part_radius; }

}  // namespace lamwright
