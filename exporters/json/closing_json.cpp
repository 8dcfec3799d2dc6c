#include "exporters/json/closing_json.hpp"

namespace lamwright {

Json closures_json(const PressPlan& plan) {
  Json out = Json::array();
  for (const Closure& closure : plan.closures)
    out.push_back({{"at", json_number(closure.z)},
                   {"hardware", closure.hardware},
                   {"width", json_number(closure.width)},
                   {"tension", json_number(closure.tension)},
                   {"pull", json_number(closure.pull())},
                   {"staggered", closure.staggered}});
  return out;
}

Json flats_json(const PressPlan& plan) {
  Json out = Json::array();
  for (const FlatPressed& flat : plan.flats) {
    Json clamps = Json::array();
    for (const Vec2& p : flat.clamps) clamps.push_back(json_point(p));
    out.push_back({{"girth", Json::array({json_number(flat.from), json_number(flat.to)})},
                   {"beams", flat.planes.size()},
                   {"clamps", clamps},
                   {"force", json_number(flat.force)},
                   {"load", json_number(flat.load())}});
  }
  return out;
}

}  // namespace lamwright
