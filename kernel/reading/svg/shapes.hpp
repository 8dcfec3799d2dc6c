// Basic shapes as paths.
#pragma once
#include "kernel/reading/svg/element.hpp"
#include "kernel/reading/svg/lengths.hpp"
#include "kernel/reading/svg/path_step.hpp"

namespace lamwright::svg_reading {

bool is_shape(std::string_view name);

// path, line, polyline, polygon, circle, ellipse and rect in their user units, started and turned as SVG 2,
// chapter 10, says; empty for a shape that is not drawn (no radius, no width). Throws Error (job): a faulty
// path or list of points, a length that is none, a negative size.
PathSteps shape(const Element& element, const Viewport& viewport, const std::string& file);

}  // namespace lamwright::svg_reading
