#include "exporters/json/numbers.hpp"

#include "shared/number.hpp"

namespace lamwright {

Json json_number(double value) {
  if (!std::isfinite(value)) return nullptr;
  const double r = rounded(value, 9);
  return r == std::floor(r) && std::abs(r) < 1e15 ? Json(static_cast<long long>(r)) : Json(r);
}

Json json_point(const Vec2& p) { return Json::array({json_number(p.x()), json_number(p.y())}); }
Json json_point(const Vec3& p) {
  return Json::array({json_number(p.x()), json_number(p.y()), json_number(p.z())});
}

std::string json_text(const Json& json) { return json.dump(2) + "\n"; }

}  // namespace lamwright
