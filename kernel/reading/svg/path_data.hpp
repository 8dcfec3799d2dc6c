// The d of a path.
#pragma once
#include "kernel/reading/svg/attribute.hpp"
#include "kernel/reading/svg/path_step.hpp"

namespace lamwright::svg_reading {

// By the grammar of SVG 2, 9.3.9, and with numbers that end in a dot as in SVG 1.1. An empty text and "none"
// give no steps. Throws Error (job) with the byte for any fault, and for more than 1 000 000 steps: nothing
// is drawn of a faulty path.
PathSteps read_path(const Attribute& attribute);

}  // namespace lamwright::svg_reading
