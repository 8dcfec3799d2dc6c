// Locating pins of a two-part press.
#pragma once
#include "kernel/press/mould/curves.hpp"

namespace lamwright::two_part {

// In the trim at both width ends, where the closing press first touches the pack: at the highest point of the
// lower mould, moved to the nearest gap between slats that takes a pin. What stands in the way is noted.
std::vector<Pin> pins(const Job& job, const Panel& panel, const PressCurves& curves,
                      std::vector<std::string>& notes);

}  // namespace lamwright::two_part
