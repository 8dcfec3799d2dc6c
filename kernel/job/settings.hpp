// Single values in place of a job's own, for trials and series.
#pragma once
#include <string>
#include <vector>

#include "shared/toml.hpp"

namespace lamwright {

// `path` names a key as messages do, with places in lists from 0: "panel.profile[1].radius". `value` is TOML
// ("300", "[46, 90]", "true"), or else a text that needs no quotes ("two-part", "18 mm").
struct Setting {
  std::string path;
  std::string value;
};

std::string to_text(const Setting& setting);  // "panel.width=300"

// Puts the values into a parsed job, in order; tables that are not there are made, lists do not grow. Nodes
// that come of a setting have its text as the path of their source. Throws Error (job) for a path that leads
// nowhere.
void apply_settings(const std::vector<Setting>& settings, toml::table& root);

// What messages say of a setting.
std::string place_of(const Setting& setting);

}  // namespace lamwright
