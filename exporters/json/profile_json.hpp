// Profiles as JSON.
#pragma once
#include "exporters/json/numbers.hpp"
#include "kernel/profile/profile.hpp"

namespace lamwright {

// [{length, radius, turn}]: mm and degrees; turn > 0 for a crown, radius positive, null for a straight line.
Json json_runs(const Profile& profile);

}  // namespace lamwright
