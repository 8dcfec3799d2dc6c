// Locating pins of a two-part press.
#pragma once
#include "kernel/press/mould/caul.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::two_part {

// In the trim at both width ends, in the caul of the mould that first holds the pack (`first_contact`), in
// the gap nearest to there: of the near gaps one that a gap of the other caul lies opposite to. They stand at
// one place round the curve only, for everywhere else the pack has to slide while the press closes. What
// keeps them out is told in `notes`.
std::vector<Pin> pins(const Job& job, const Panel& panel, const PressCurves& curves, const LaidCaul& bed,
                      double extend, std::vector<std::string>& notes);

}  // namespace lamwright::two_part
