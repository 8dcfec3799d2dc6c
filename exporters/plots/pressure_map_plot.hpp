// Pressure over girth and width.
#pragma once
#include <optional>

#include "exporters/drawing/drawing.hpp"
#include "kernel/plugin/exporter.hpp"
#include "shared/reported.hpp"

namespace lamwright::plots {

// Bands of equal pressure on the blank's outer face laid flat, girth to the right, width up, each axis to its
// own scale; beside them the scale with the glue's range. Formers, trim lines, ends of runs; least and
// greatest of the finished panel. Nothing where no pressure is known.
std::optional<drawing::Drawing> pressure_map_plot(const ExportInput& input, const Reported& reported);

}  // namespace lamwright::plots
