// The datum slat of a caul by its number on the drawing.
#pragma once
#include <string>

#include "kernel/press/plan.hpp"

namespace lamwright::html::bench {

// "12": runs count from 1, from the left end of the curve. Empty for a caul without slats.
std::string datum_run(const PressPlan& plan, Layer::Kind caul);

}  // namespace lamwright::html::bench
