// Plies, covers and sheathing as sheets to cut.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright {

// Plies from the inner face outward, then covers, sheathing, liners, cauls without slats. Plies and covers
// are cut to the longest of them, in whole mm; so are sheathing and liners, which cover the contact edge past
// the pack.
std::vector<PackSheet> pack_sheets(const Job& job, const PressPlan& plan);

// Those that come from boards, on whole boards, for the job's count. Veneers come in leaves and are bought by
// area.
std::vector<BlankSheets> blank_sheets(const Job& job, const std::vector<PackSheet>& pack,
                                      std::vector<std::string>& notes);

}  // namespace lamwright
