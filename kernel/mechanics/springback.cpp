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

double bonded_stiffness(const std::vector<Lamina>& section) {
  const double z = neutral_height(section);
  double sum = 0;
  for (const Lamina& l : section) sum += l.modulus * (std::pow(l.to - z, 3) - std::pow(l.from - z, 3)) / 3;
  return sum;
}

double loose_stiffness(const std::vector<Lamina>& section) {
  double sum = 0;
  for (std::size_t from = 0; from < section.size();) {
    std::size_t to = from + 1;
    while (to < section.size() && section[to].joined) ++to;
    sum += bonded_stiffness({section.begin() + long(from), section.begin() + long(to)});
    from = to;
  }
  return sum;
}

double springback_share(const std::vector<Lamina>& section) {
  return loose_stiffness(section) / bonded_stiffness(section);
}

double share_of_test_piece(double form_radius, double part_radius) { return 1 - form_radius / part_radius; }

}  // namespace lamwright
