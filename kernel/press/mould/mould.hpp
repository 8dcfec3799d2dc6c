// One half of a press as it stands on the bench by itself: what every method's moulds have in common.
#pragma once
#include "kernel/part/frame.hpp"
#include "kernel/part/part.hpp"

namespace lamwright {

// In the plane of the formers, foot on Y = 0, wood under the contact edge. The upper half of a two-part press
// is described standing on its head, so that it is made like any other.
struct Mould {
  Profile contact;  // left to right, carried on past the pack at both ends
  double left_extend = 0, right_extend = 0;
  std::vector<Vec2> left, right;  // sides: from the contact edge's end to the foot's corner

  double foot_left() const { return left.back().x(); }
  double foot_right() const { return right.back().x(); }
  double foot() const { return foot_right() - foot_left(); }
};

// X of one of its sides at a height.
double side_at(const std::vector<Vec2>& side, double y);

// A part described in another frame: the same piece, its own axes turned. `to` takes the old axes to the new
// ones and keeps the plane of X and Y.
PartSpec reframed(PartSpec spec, const Frame& to);
// First `inner`, then `outer`.
Frame composed(const Frame& outer, const Frame& inner);

}  // namespace lamwright
