#include "exporters/json/findings_json.hpp"

namespace lamwright {

Json json_findings(const std::vector<Finding>& findings) {
  Json out = Json::array();
  for (const Finding& f : findings)
    out.push_back({{"id", f.id},
                   {"title", f.title},
                   {"value", json_number(f.value)},
                   {"limit", json_number(f.limit)},
                   {"bound", f.bound == Bound::at_least ? "at least" : "at most"},
                   {"unit", f.unit},
                   {"verdict", to_text(f.verdict)},
                   {"where", f.where},
                   {"basis", f.basis},
                   {"advice", f.advice}});
  return out;
}

}  // namespace lamwright
