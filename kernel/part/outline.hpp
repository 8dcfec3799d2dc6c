// The outline of a flat part: one closed loop of lines and arcs.
#pragma once
#include <string>
#include <vector>

#include "kernel/profile/segment.hpp"

namespace lamwright {

// Anticlockwise, simple, each segment beginning exactly where the one before ends. Immutable.
class Outline {
 public:
  // A clockwise loop is turned round. Throws Error (geometry, at `name`) when a joint gapes by more than 1e-6
  // (names both points and the gap), when the loop crosses itself (names the point) or when it has no area.
  Outline(std::vector<Segment> loop, const std::string& name);

  // In order, the last ends where the first begins.
  const std::vector<Segment>& segments() const { return segments_; }
  double area() const { return area_; }        // mm2, closed form
  Vec2 centroid() const { return centroid_; }  // of the area enclosed, mm
  const Box2& box() const { return box_; }     // exact, bulges of arcs included
  bool contains(const Vec2& p) const;          // points on the edge: either answer
  double distance(const Vec2& p) const;        // to the edge, never negative

 private:
  std::vector<Segment> segments_;
  double area_ = 0;
  Vec2 centroid_{0, 0};
  Box2 box_;
};

// Straight edges from corner to corner. Throws as the constructor does.
Outline polygon(const std::vector<Vec2>& corners, const std::string& name);
Outline rectangle(const Vec2& low, const Vec2& high);  // two opposite corners; throws when it has no area

}  // namespace lamwright
