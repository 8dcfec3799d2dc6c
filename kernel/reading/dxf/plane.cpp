#include "kernel/reading/dxf/plane.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::dxf_reading {
namespace {

constexpr const char* kFlatten = "turn the drawing into the XY plane, or put this on a layer that is off";

}  // namespace

bool seen_from_below(const Record& entity) {
  const Vec3 up(entity.number(210, 0), entity.number(220, 0), entity.number(230, entity.find(210) ? 0 : 1));
  const double sideways = std::max(std::abs(up.x()), std::abs(up.y()));
  if (sideways > kTangent * std::abs(up.z()) || up.z() == 0)
    throw entity.fault("lies off the XY plane (extrusion " + number(up.x()) + ", " + number(up.y()) + ", " +
                           number(up.z()) + ")",
                       kFlatten);
  return up.z() < 0;
}

Affine own_axes(const Record& entity) { return seen_from_below(entity) ? mirrored() : Affine(); }

void ensure_level(const Record& entity, double z, double other, double size) {
  if (std::abs(z - other) > kSamePoint * std::max(1.0, size))
    throw entity.fault("leaves the XY plane (Z from " + number(z) + " to " + number(other) + ")", kFlatten);
}

}  // namespace lamwright::dxf_reading
