#include "kernel/reading/points/offsets.hpp"

#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {

std::vector<Vec2> points_from(const OffsetsSpec& spec) {
  if (!(std::isfinite(spec.every) && spec.every > 0))
    throw geometry_error("offsets", "are " + number(spec.every) + " apart", "give a distance above 0");
  if (spec.offsets.size() < 3)
    throw geometry_error("offsets", "are " + std::to_string(spec.offsets.size()), "give at least three");
  std::vector<Vec2> points;
  for (const double offset : spec.offsets) {
    const std::size_t index = points.size();
    if (!std::isfinite(offset))
      throw geometry_error("offset " + std::to_string(index + 1), "is " + number(offset), "give a length");
    points.push_back({double(index) * spec.every, offset});
  }
  return points;
}

}  // namespace lamwright
