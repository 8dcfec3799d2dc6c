// Several runs built into one folder.
#pragma once
#include "cli/runs.hpp"

namespace lamwright::cli {

// Each run into a folder of its name below -o DIR, and results.csv beside them: all of it is moved into place
// at the end, in one step, or nothing. A run that is refused or fails a check has its row and no folder; the
// others go on. Returns the status of the first such run.
int build_series(const std::vector<Run>& runs, const po::variables_map& values, Registry& registry);

}  // namespace lamwright::cli
