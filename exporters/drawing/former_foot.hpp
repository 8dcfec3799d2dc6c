// Where a former stands and what it carries: its foot and its contact edge.
#pragma once
#include <vector>

#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// The edge that stands on the beam, left to right. It is level unless beams lean; that of an upper former is
// its top.
struct Foot {
  Vec2 left{0, 0};
  Vec2 right{0, 0};
  bool above = false;

  double lean() const;  // radians, positive: the right end is higher
  bool level() const;
  double outward() const { return above ? 1 : -1; }
};

// The contact curve of the station that a former stands at, in its own frame's X and Y; null for a stray
// part.
const Profile* contact_of(const PressPlan& plan, std::size_t part);
Foot foot_of(const PressPlan& plan, const Part& part, const std::vector<Segment>& outline);

}  // namespace lamwright::drawing
