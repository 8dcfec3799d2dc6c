// Slats of a caul by their numbers on its drawing.
#pragma once
#include <string>
#include <vector>

#include "kernel/press/plan.hpp"

namespace lamwright::html::bench {

// "12": runs count from 1, from the left end of the curve. Empty for a caul without slats.
std::string datum_run(const PressPlan& plan, Layer::Kind caul);
// The runs that the recess opposite a pin cuts into, numbered likewise. Empty for cauls without slats.
std::vector<std::string> recessed_runs(const PressPlan& plan, const Pin& pin);

}  // namespace lamwright::html::bench
