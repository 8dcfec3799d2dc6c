// The forms in which a job file gives a profile.
#pragma once
#include <optional>

#include "kernel/job/profile_reading.hpp"
#include "kernel/job/read_job.hpp"
#include "kernel/job/reader.hpp"

namespace lamwright {

// Reads panel.profile at `node`. Errors go to the reader.
std::optional<ProfileReading> read_profile_node(Reader& reader, const Node& node, const Sources& sources);

}  // namespace lamwright
