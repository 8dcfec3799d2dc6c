// What the stock lacks for a caul, in a joiner's words.
#pragma once
#include <string>
#include <vector>

#include "kernel/caul/run_kinds.hpp"

namespace lamwright {

// One sentence for each lack, by kind of run and then by stock; none when every run is made. Slats that are
// missing are those of the cheapest way to make the runs that are not, beside those that are.
std::vector<std::string> missing_slats(const ScheduleSpec& spec, const RunKinds& kinds,
                                       const SolvedRuns& solved);

}  // namespace lamwright
