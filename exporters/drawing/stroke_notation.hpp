// A small notation for letters as strokes that a person can read and edit.
#pragma once
#include <string_view>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

// Strokes are parted by ";". A stroke is a start "x,y" and what it passes, parted by spaces:
//   x,y      straight
//   hx,y     a quarter of an oval that leaves level and arrives upright
//   vx,y     a quarter of an oval that leaves upright and arrives level
//   tx,y     an arc, leaving the way the piece before it arrived
//   lx,y     an arc that arrives level
//   ux,y     an arc that arrives upright
//   a60:x,y  an arc that sweeps 60 degrees, anticlockwise positive
//   o30:x,y  goes on turning with radius 30 until x,y lies ahead, then straight
//   s20:x,y  turns with radius 20, straight, turns back: arrives the way it left
// A stroke ".x,y" is a dot: a circle of radius kDot. Throws Error (internal) when the text is none of these.
std::vector<Path> strokes_of(std::string_view notation);

// With round ends and the width of a stroke this is half as wide again as one.
inline constexpr double kDot = 2.5;

}  // namespace lamwright::drawing
