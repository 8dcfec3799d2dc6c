// Curves of a drawing, with the blocks inserted.
#pragma once
#include "kernel/reading/dxf/document.hpp"
#include "kernel/reading/dxf/tally.hpp"

namespace lamwright::dxf_reading {

// Every entity that draws a curve and shows, in the order of the file, in mm. A curve in a block has the
// handles of its inserts before its own, with slashes between them; on layer 0 of a block it lies on the
// layer of the insert. Throws Error (job) as read_dxf does, and for blocks that hold themselves.
std::vector<DrawnCurve> curves(Document& document, double mm_per_unit, const std::string& file, Tally& tally);

}  // namespace lamwright::dxf_reading
