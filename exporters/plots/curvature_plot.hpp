// Curvature along the girth.
#pragma once
#include <optional>

#include "exporters/drawing/drawing.hpp"
#include "kernel/plugin/exporter.hpp"
#include "shared/reported.hpp"

namespace lamwright::plots {

// Of the described face without trim, as pressed and as released, crowns upward; radii of the bends,
// inflections. One curve where nothing springs back. Nothing where all is straight.
std::optional<drawing::Drawing> curvature_plot(const ExportInput& input, const Reported& reported);

}  // namespace lamwright::plots
