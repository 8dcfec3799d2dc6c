// The forms in which a job file gives a profile.
#pragma once
#include <optional>

#include "kernel/job/reader.hpp"
#include "kernel/profile/profile.hpp"

namespace lamwright {

// Reads panel.profile at `node`; starts at the origin with heading 0. Errors go to the reader.
std::optional<Profile> read_profile_node(Reader& reader, const Node& node);

}  // namespace lamwright
