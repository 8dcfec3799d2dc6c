// How a flat part lies on a sheet: turned by quarter turns about its own (0, 0), then shifted. Never
// mirrored.
#pragma once
#include <array>

#include "kernel/profile/segment.hpp"

namespace lamwright {

// The frame of the part goes first through the turn, then through the shift.
struct Placing {
  int quarters = 0;  // anticlockwise, 0 to 3: exact, so that a part keeps its size to the last bit
  Vec2 shift{0, 0};  // mm

  // Of a direction: turned only.
  Vec2 vector(const Vec2& v) const {
    switch (quarters & 3) {
      case 1:
        return {-v.y(), v.x()};
      case 2:
        return {-v.x(), -v.y()};
      case 3:
        return {v.y(), -v.x()};
      default:
        return v;
    }
  }
  Vec2 point(const Vec2& p) const { return vector(p) + shift; }  // turned, then shifted
  // Sweep and radius stay.
  Segment segment(const Segment& s) const {
    return {point(s.from), point(s.to), s.turn, s.turn == 0 ? s.centre : point(s.centre), s.radius};
  }
};

}  // namespace lamwright
