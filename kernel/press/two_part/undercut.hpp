// Shapes that an upper half does not come off along the pull.
#pragma once
#include "kernel/panel/panel.hpp"

namespace lamwright::two_part {

// Throws Error (geometry) for an undercut: a normal more than a right angle from the axis. Names the runs,
// angles and places, and the pull that would clear them if there is one: the bisector where that presses all
// over, else the most even of those that clear it.
void refuse_undercut(const Panel& panel, double axis, double draft);

}  // namespace lamwright::two_part
