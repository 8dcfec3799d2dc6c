// The faces of a part put on its surface: flat faces, side, and the walls and floors of bores.
#pragma once
#include <vector>

#include "kernel/part/surface/bored.hpp"
#include "kernel/part/surface/surface.hpp"

namespace lamwright::surface {

// Both flat faces, w = 0 and w = thickness, with the mouths that open in them.
void add_flats(Surface& surface, const Rails& rails, double thickness, const std::vector<Bored>& bores);
// The side with the mouths that open in it, the rims of the flat faces and the lines up its corners.
void add_side(Surface& surface, const Rails& rails, double thickness, const std::vector<Bored>& bores);
// The wall of a bore and the lines at both its ends.
void add_wall(Surface& surface, const Bored& bore);
// The flat bottom of a blind bore; a counterbore's shoulder when `inner` goes on from there.
void add_floor(Surface& surface, const Bored& bore, const Bored* inner);

}  // namespace lamwright::surface
