// LINE, ARC, CIRCLE and ELLIPSE.
#pragma once
#include "kernel/reading/dxf/outline.hpp"
#include "kernel/reading/dxf/record.hpp"

namespace lamwright::dxf_reading {

// All throw Error (job) at the record's line: a group is missing, off the XY plane, a negative radius.
// An arc or ellipse whose ends fall together is a full one.
Outline line_outline(const Record& entity);
Outline arc_outline(const Record& entity);
Outline circle_outline(const Record& entity);   // two half circles
Outline ellipse_outline(const Record& entity);  // circular when its axes are equal

}  // namespace lamwright::dxf_reading
