// Profiles that somebody measured or drew: {points}, {offsets}, {svg} and {dxf}.
#pragma once
#include "kernel/job/profile_reading.hpp"
#include "kernel/job/read_job.hpp"
#include "kernel/job/reader.hpp"

namespace lamwright {

// Whether the table at `node` is of one of these forms.
bool is_curve(const Reader& reader, const Node& node);

// Errors go to the reader; nothing is returned then.
std::optional<ProfileReading> read_curve(Reader& reader, const Node& node, const Sources& sources);

}  // namespace lamwright
