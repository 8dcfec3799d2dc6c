// The bores of a part in the order of their stations, and the table that lists them.
#pragma once
#include <vector>

#include "exporters/drawing/table.hpp"
#include "kernel/part/part.hpp"

namespace lamwright::drawing {

// By X of the mouth, then by Y.
std::vector<Bore> by_station(const Part& part);

// no., use, from left end, from centre line, height above the underside, from the near face, diameter, depth,
// counterbore.
Table beam_table(const Part& beam);
// no., use, X, Y, bore, direction.
Table former_table(const Part& former);

}  // namespace lamwright::drawing
