// Runs and trim along the girth of the blank's outer face.
#pragma once
#include "exporters/plots/axes.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::plots {

// Over a field whose lower axis is that girth. Runs that are all trim have no name.
void add_outer_runs(drawing::Drawing& drawing, const Field& field, const PressPlan& plan);

}  // namespace lamwright::plots
