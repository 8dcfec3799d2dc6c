// A DXF text by its sections.
#pragma once
#include <vector>

#include "kernel/reading/dxf/blocks.hpp"
#include "kernel/reading/dxf/layers.hpp"
#include "kernel/reading/dxf/units.hpp"

namespace lamwright::dxf_reading {

struct Document {
  HeaderUnits units;
  Layers layers;
  Blocks blocks;
  std::vector<Records> entities;  // each stands at the first entity of a section ENTITIES
};

// Sections may stand in any order; all but ENTITIES may be missing. Text and file name must outlive it.
// Throws Error (job): no DXF, no ENTITIES, a text that is cut short.
Document document(std::string_view text, const std::string& file);

}  // namespace lamwright::dxf_reading
