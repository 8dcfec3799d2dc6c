// How far from its end a pack stays short of the curve under straps.
#pragma once
#include <cmath>

namespace lamwright {

// Per mm of width: `pressure` MPa on the pack's end, `end_force` N/mm of the end slat, `moment` N that bends
// the loose sheets to the curve. The strip l in mm with p l^2 / 2 + F l = M; infinite when nothing closes it.
// Statics of a free end; not counted: friction between the sheets.
inline double open_strip(double pressure, double end_force, double moment) {
  if (moment <= 0) return 0;
  if (pressure <= 0) return end_force > 0 ? moment / end_force : INFINITY;
  return (std::sqrt(end_force * end_force + 2 * pressure * moment) - end_force) / pressure;
}

// The moment that just closes a strip of that length.
inline double closing_moment(double pressure, double end_force, double strip) {
  return pressure * strip * strip / 2 + end_force * strip;
}

}  // namespace lamwright
