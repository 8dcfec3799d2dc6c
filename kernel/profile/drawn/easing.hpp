// Kinks of a drawn chain: found, refused or rounded.
#pragma once
#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright {

// A joint that turns by no more is tangent but for the rounding of the file: a degree's tenth, radians.
extern const double kSlightKink;

// Angle (radians, anticlockwise positive) by which the chain turns between pieces i and i + 1.
double kink(const std::vector<DrawnPiece>& chain, std::size_t i);
// The greatest, by size; 0 for a chain of one piece.
double greatest_kink(const std::vector<DrawnPiece>& chain);

// Each kink rounded by an arc of `radius` (mm) that takes radius tan(angle / 2) from the lines beside it; the
// chain itself where it has none. Radius 0 rounds nothing. Throws Error (geometry) for a kink that is left,
// with its point and angle and the offer of ease, and where there is no room or no line beside it.
std::vector<DrawnPiece> eased(const std::vector<DrawnPiece>& chain, double radius);

}  // namespace lamwright
