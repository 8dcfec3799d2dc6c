#include "kernel/mechanics/bend_limit.hpp"

#include <algorithm>

namespace lamwright {

double elastic_ratio(double modulus, double strength) { return modulus / (2 * strength); }

double forming_stress(double modulus, double thickness, double radius) {
  return modulus * thickness / (2 * radius);
}

double curvature_factor(double thickness, double radius) {
  const double ratio = thickness / radius;
  return std::max(0.0, 1 - 2000 * ratio * ratio);
}

double bending_factor(double ratio) { return ratio >= 240 ? 1 : 0.76 + 0.001 * ratio; }

std::optional<double> plywood_radius(std::vector<PlywoodBend> table, double thickness) {
  if (table.empty()) return std::nullopt;
  std::sort(table.begin(), table.end(),
            [](const PlywoodBend& a, const PlywoodBend& b) { return a.thickness < b.thickness; });
  const auto after = std::find_if(table.begin(), table.end(),
                                  [&](const PlywoodBend& row) { return row.thickness >= thickness; });
  const auto scaled = [&](const PlywoodBend& row) { return row.radius * thickness / row.thickness; };
  if (after == table.begin()) return scaled(table.front());
  if (after == table.end()) return scaled(table.back());
  const PlywoodBend &low = *(after - 1), &high = *after;
  const double share = (thickness - low.thickness) / (high.thickness - low.thickness);
  return low.radius + share * (high.radius - low.radius);
}

}  // namespace lamwright
