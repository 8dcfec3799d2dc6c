// Tables of how the upper half of a press seats.
#pragma once
#include "exporters/drawing/table.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Least, mean and greatest pressure and where they are. Precondition: the plan is seated and held.
Table pressure_table(const PressPlan& plan);
// The pulls that were compared, pressures as multiples of an even one.
Table pull_table(const PressPlan& plan);

}  // namespace lamwright::drawing
