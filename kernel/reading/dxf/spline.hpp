// SPLINE.
#pragma once
#include "kernel/reading/dxf/outline.hpp"
#include "kernel/reading/dxf/record.hpp"

namespace lamwright::dxf_reading {

// Degree 1 to 15, weights from 1e-9 to 1e9. Where the file gives points to pass through and no control
// points, the curve between them is not the file's to say: cubic_through of bspline.hpp. Throws Error (job)
// at the record's line: counts that do not fit, knots that fall, a curve that is torn, marked closed and not
// so, off the XY plane.
Outline spline_outline(const Record& entity);

bool has_only_fit_points(const Record& spline);

}  // namespace lamwright::dxf_reading
