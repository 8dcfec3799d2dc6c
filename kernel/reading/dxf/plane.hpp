// Entities must lie in the XY plane.
#pragma once
#include "kernel/profile/drawn/affine.hpp"
#include "kernel/reading/dxf/record.hpp"

namespace lamwright::dxf_reading {

// Whether the extrusion (codes 210, 220, 230; (0, 0, 1) when absent) points down. Throws Error (job) when it
// points anywhere but up or down.
bool seen_from_below(const Record& entity);

// From the entity's own axes to those around it, by the arbitrary axis algorithm: x -> -x for an extrusion
// that points down.
Affine own_axes(const Record& entity);

// Throws Error (job) where two heights (in the units of the file) differ by more than 1e-6 of the greater
// of 1 and the entity's size.
void ensure_level(const Record& entity, double z, double other, double size);

}  // namespace lamwright::dxf_reading
