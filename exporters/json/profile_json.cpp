#include "exporters/json/profile_json.hpp"

#include "shared/units.hpp"

namespace lamwright {

Json json_runs(const Profile& profile) {
  Json runs = Json::array();
  for (const Run& run : profile.runs())
    runs.push_back({{"length", json_number(run.length)},
                    {"radius", run.straight() ? Json(nullptr) : json_number(1 / std::abs(run.curvature))},
                    {"turn", json_number(degrees(run.turn()))}});
  return runs;
}

}  // namespace lamwright
