// How a bore lies in its part: the faces it enters and leaves, its length, its distances.
#pragma once
#include "kernel/part/part.hpp"

namespace lamwright {

// Finds faces and length and checks the bore against the edges. Throws Error (geometry).
Bore resolve_bore(const PartSpec& part, const BoreSpec& bore);

// Throws Error (geometry) when two of the bores leave less than kLeastWood between them.
void refuse_near_bores(const std::string& part, const std::vector<Bore>& bores);

// Wood left between two resolved bores, mm (negative: they meet). Counterbores count as bores of their own.
double wood_between(const Bore& a, const Bore& b);

}  // namespace lamwright
