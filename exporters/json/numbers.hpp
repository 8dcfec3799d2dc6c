// Numbers and points as JSON: rounded to 1e-9, never "-0".
#pragma once
#include <nlohmann/json.hpp>

#include "kernel/profile/vector.hpp"

namespace lamwright {

using Json = nlohmann::ordered_json;  // keeps the order in which keys are written

Json json_number(double value);  // null when it is not finite
Json json_point(const Vec2& p);  // [x, y]
Json json_point(const Vec3& p);  // [x, y, z]

// Two spaces of indentation, a newline at the end.
std::string json_text(const Json& json);

}  // namespace lamwright
