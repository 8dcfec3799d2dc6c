// Round numbers along an axis, in the units that a job is reported in.
#pragma once
#include <string>
#include <vector>

#include "shared/reported.hpp"

namespace lamwright::plots {

// `size` is what one of it is in mm, MPa or 1/mm. Steps are 1, 2 or 5 times a power of ten, `least` or more.
struct AxisUnit {
  std::string name;
  double size = 1;
  double least = 0;
};
// mm, cm, m; whole inches, from three feet on whole feet where a job is in feet.
AxisUnit length_unit(const Reported& reported, double greatest);
AxisUnit pressure_unit(const Reported& reported);   // MPa or psi
AxisUnit curvature_unit(const Reported& reported);  // 1/m or 1/ft

struct Tick {
  double at = 0;  // mm, MPa or 1/mm
  std::string text;
};

// At most `most` steps, low < high.
std::vector<Tick> ticks_within(double low, double high, int most, const AxisUnit& unit);
// The same, the first not above `low`, the last not below `high`; it may take a step more at each end.
std::vector<Tick> ticks_around(double low, double high, int most, const AxisUnit& unit);

}  // namespace lamwright::plots
