#include "exporters/plots/ticks.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/pressure_steps.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::plots {
namespace {

double step_for(double low, double high, int most, const AxisUnit& unit) {
  return std::max(unit.least, drawing::axis_step((high - low) / unit.size, most));
}

std::vector<Tick> counted_off(long from, long to, double step, const AxisUnit& unit) {
  std::vector<Tick> out;
  for (long i = from; i <= to; ++i) {
    const double value = step * double(i);
    out.push_back({value * unit.size, number(value, 6)});
  }
  return out;
}

}  // namespace

AxisUnit length_unit(const Reported& reported, double greatest) {
  switch (reported.unit()) {
    case LengthUnit::mm:
      return {"mm", 1};
    case LengthUnit::cm:
      return {"cm", 10};
    case LengthUnit::m:
      return {"m", 1000};
    case LengthUnit::foot:
      if (greatest >= 3 * kMmPerFoot) return {"ft", kMmPerFoot, 1};
      break;
    case LengthUnit::inch:
      break;
  }
  return {"in", kMmPerInch, 1};
}

AxisUnit pressure_unit(const Reported& reported) {
  return reported.imperial() ? AxisUnit{"psi", kMpaPerPsi} : AxisUnit{"MPa", 1};
}

AxisUnit curvature_unit(const Reported& reported) {
  return reported.imperial() ? AxisUnit{"1/ft", 1 / kMmPerFoot} : AxisUnit{"1/m", 1e-3};
}

std::vector<Tick> ticks_within(double low, double high, int most, const AxisUnit& unit) {
  const double step = step_for(low, high, most, unit);
  return counted_off(std::lround(std::ceil(low / unit.size / step - kWholeNumber)),
                     std::lround(std::floor(high / unit.size / step + kWholeNumber)), step, unit);
}

std::vector<Tick> ticks_around(double low, double high, int most, const AxisUnit& unit) {
  const double step = step_for(low, high, most, unit);
  return counted_off(std::lround(std::floor(low / unit.size / step + kWholeNumber)),
                     std::lround(std::ceil(high / unit.size / step - kWholeNumber)), step, unit);
}

}  // namespace lamwright::plots
