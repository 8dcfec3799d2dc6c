// What comes out of the press over what goes in.
#pragma once
#include <optional>

#include "exporters/drawing/drawing.hpp"
#include "kernel/plugin/exporter.hpp"
#include "shared/reported.hpp"

namespace lamwright::plots {

// The described face as released laid on the same as pressed at the middle of the girth, both without trim
// and true to one scale; the end that moves farther enlarged where it would not show; distances. Nothing
// where nothing springs back.
std::optional<drawing::Drawing> springback_plot(const ExportInput& input, const Reported& reported);

}  // namespace lamwright::plots
