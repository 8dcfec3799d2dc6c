// Where nodes lie and how they look, as glTF says it.
#pragma once
#include <string>

#include "exporters/json/numbers.hpp"
#include "kernel/part/frame.hpp"

namespace lamwright::gltf {

// Sixteen numbers, column by column.
Json matrix(const Frame& frame);
// Unit quaternion, x y z w, w not negative.
Json rotation(const Frame& frame);
// "#rrggbb" (sRGB, IEC 61966-2-1) as linear red, green, blue, and 1.
Json linear_colour(const std::string& colour);

}  // namespace lamwright::gltf
