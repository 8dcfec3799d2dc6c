// What a press of two moulds holds: two halves, of which the upper one lifts, and beams that may lean.
#pragma once
#include <vector>

#include "exporters/drawing/plan_bodies.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

bool two_moulds(const PressPlan& plan);

// Pieces of one half that the plane Z = z cuts, beams and bearers first.
std::vector<const Body*> half_at(const PressPlan& plan, double z, Group half);
// The former, or the beam or bearer, of one half at a station; null without one.
const Body* former_at(const PressPlan& plan, double z, Group half);
const Body* beam_at(const PressPlan& plan, double z, Group half);

// Angle of the lower beam from the level, radians, positive: its right end is higher.
double lean(const PressPlan& plan, double z);

// Where the foot of a half crosses X = 0, on the beam's inner face; the base point without a beam.
Vec2 foot_at(const PressPlan& plan, double z, Group half);

// Ends of an outline where it is widest, each the point nearest to the foot.
struct Sides {
  Vec2 left{0, 0};
  Vec2 right{0, 0};
};
Sides sides_of(const std::vector<Segment>& outline, Group half);

// A lowest point of an outline as `highest`, the leftmost of its corners.
Vec2 lowest(const std::vector<Segment>& outline);

}  // namespace lamwright::drawing
