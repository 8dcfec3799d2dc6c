// Puts single values into a job that was parsed.
#pragma once
#include <string>
#include <vector>

#include "kernel/job/setting.hpp"
#include "shared/toml.hpp"

namespace lamwright {

// Puts the values into a parsed job, in order; tables that are not there are made, lists do not grow. Nodes
// that come of a setting have its text as the path of their source. Throws Error (job) for a path that leads
// nowhere.
void apply_settings(const std::vector<Setting>& settings, toml::table& root);

// What messages say of a setting.
std::string place_of(const Setting& setting);

}  // namespace lamwright
