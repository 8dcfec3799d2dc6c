// Shapes that tests draw.
#pragma once
#include "kernel/profile/segment.hpp"
#include "shared/units.hpp"

namespace lamwright::test {

// An arc about `centre` between two angles in degrees; anticlockwise when `to` is the greater.
inline Segment arc(const Vec2& centre, double radius, double from, double to) {
  return {centre + radius * direction(radians(from)), centre + radius * direction(radians(to)),
          radians(to - from), centre, radius};
}

}  // namespace lamwright::test
