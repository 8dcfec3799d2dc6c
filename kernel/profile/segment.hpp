// A line or arc in the plane, as outlines and drawings use it.
#pragma once
#include <vector>

#include "kernel/profile/profile.hpp"

namespace lamwright {

// From one point to another, straight (turn 0) or along a circle. turn is the angle swept, radians,
// anticlockwise positive, |turn| < 2 pi; centre and radius hold only when turn is not 0.
struct Segment {
  Vec2 from{0, 0};    // mm
  Vec2 to{0, 0};      // where travel ends, mm
  double turn = 0;    // radians, anticlockwise positive
  Vec2 centre{0, 0};  // of the circle
  double radius = 0;  // mm, above 0

  bool straight() const { return turn == 0; }                             // exactly 0
  double length() const;                                                  // mm, along the arc
  Vec2 point(double share) const;                                         // share 0 to 1 of its length
  Vec2 tangent(double share) const;                                       // unit
  Segment reversed() const { return {to, from, -turn, centre, radius}; }  // travelled the other way
};

Segment line(const Vec2& from, const Vec2& to);  // ends apart, which is not checked
// The run that starts at a pose; a crown turns clockwise, so its turn is negative here.
Segment segment(const Pose& from, const Run& run);
// The runs of a profile as segments; ends are shared to the last bit.
std::vector<Segment> segments(const Profile& profile);
// The part of a profile between two stations (0 <= from < to <= girth). Throws Error (internal) outside of
// that.
Profile cut(const Profile& profile, double from, double to);

Box2 box(const Segment& segment);  // exact, bulges of arcs included
// mm, from the nearest point of the segment, ends included.
double distance(const Segment& segment, const Vec2& p);
// Points that two segments share (touching counts; ends included, overlapping collinear stretches give their
// ends).
std::vector<Vec2> crossings(const Segment& a, const Segment& b);

}  // namespace lamwright
