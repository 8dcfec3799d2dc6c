// Pressure along the girth.
#pragma once
#include <optional>

#include "exporters/drawing/drawing.hpp"
#include "kernel/plugin/exporter.hpp"
#include "shared/reported.hpp"

namespace lamwright::plots {

// Over the girth of the blank's outer face: mean over the width, least and greatest over the width as a band,
// the glue's range, ends of runs, trim lines. Nothing where no pressure is known.
std::optional<drawing::Drawing> pressure_plot(const ExportInput& input, const Reported& reported);

}  // namespace lamwright::plots
