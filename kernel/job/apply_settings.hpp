// Single values laid over a parsed job. Apart from settings.hpp, so that no public header asks for a TOML
// parser.
#pragma once
#include "kernel/job/settings.hpp"
#include "shared/toml.hpp"

namespace lamwright {

// Puts the values into a parsed job, in order; tables that are not there are made, lists do not grow. Nodes
// that come of a setting have its text as the path of their source. Throws Error (job) for a path that leads
// nowhere.
void apply_settings(const std::vector<Setting>& settings, toml::table& root);

}  // namespace lamwright
