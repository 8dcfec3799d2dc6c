// The elastic rule's share of curvature lost for a lay-up that a notebook names in words.
#pragma once
#include <optional>
#include <string>

#include "kernel/job/read_job.hpp"

namespace lamwright {

// `layup` in the words of layup_key; its rows are looked for among the program's and those of
// `sources.data()`. Nothing for other words or rows that are not known. Throws Error (job or file) for faulty
// trade rows.
std::optional<double> computed_share(const std::string& layup, const Sources& sources);

}  // namespace lamwright
