// A drawing as an ASCII DXF file for a router.
#pragma once
#include <string>

#include "exporters/drawing/drawing.hpp"

namespace lamwright {

// r2000: AC1015, r12: AC1009.
enum class DxfVersion { r2000, r12 };

// One layer a pen that is used. A path is one polyline with arcs as bulges, closed where the path is; a bare
// segment a LINE or ARC; circles are CIRCLE, texts TEXT; an area is its loops. What has no length is left
// out. R2000 names millimetres in its header; R12 has no variable for a unit, and no LWPOLYLINE: its
// polylines are POLYLINE with VERTEX. Coordinates to 1e-6; bulges and angles, which are ratios, to 1e-9, so
// that the middle of an arc over a chord of 2 m is as exact as its ends.
std::string dxf_text(const drawing::Drawing& drawing, DxfVersion version);

// "r2000" or "r12".
DxfVersion dxf_version(const std::string& name);

}  // namespace lamwright
