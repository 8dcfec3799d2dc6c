// Points along drawn pieces.
#pragma once
#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright {

double length(const DrawnPiece& piece);  // mm; of a Bezier to 1e-6 of itself or better for fair curves

// `count` (>= 2) points evenly spread over the length of a chain, its two ends among them.
std::vector<Vec2> samples(const std::vector<DrawnPiece>& chain, std::size_t count);

// Greatest distance of the chain from a profile, looked for at `count` evenly spread points, and where it is.
struct Deviation {
  double distance = 0;
  Vec2 at{0, 0};
};
Deviation deviation(const std::vector<DrawnPiece>& chain, const Profile& from, std::size_t count);

}  // namespace lamwright
