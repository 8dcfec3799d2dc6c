// Curves from DXF text files, R12 to current.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "kernel/profile/drawn/drawn.hpp"
#include "shared/quantity.hpp"

namespace lamwright {

struct DxfSpec {
  std::string file;                 // name for messages
  std::optional<LengthUnit> units;  // for a file that states none; a stated unit wins and a note says so
};

// LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE (2D, bulges), SPLINE, ELLIPSE, and INSERT of blocks of these
// (nested, scaled, turned, mirrored, arrays). Others are left out and counted in a note, and so is what is
// off, frozen or on paper space. Units from $INSUNITS. Throws Error (job) with file and line for a binary
// file, text that is no DXF, numbers that are none, curves off the XY plane (extrusion (0, 0, -1) is
// mirrored as the format says), a file without units when none are given; limits: 256 MB, 32 levels of
// blocks, 200 000 pieces.
DrawnFile read_dxf(std::string_view text, const DxfSpec& spec);

}  // namespace lamwright
