// Parts as they are seen along one direction.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/part/part.hpp"

namespace lamwright::drawing {

// The paper's two directions in the frame that is looked at; both unit and square to each other.
struct Projection {
  Vec3 right{1, 0, 0};
  Vec3 up{0, 1, 0};

  Vec2 point(const Vec3& p) const { return {p.dot(right), p.dot(up)}; }
  Vec3 toward_viewer() const { return cross3(right, up); }
};

// The part's own frame where `placed` puts it, seen so.
struct Seen {
  Frame placed;
  Projection along;

  Vec2 point(const Vec3& own) const { return along.point(placed.point(own)); }
  Vec2 vector(const Vec3& own) const { return along.point(placed.vector(own)); }
};

// Closed outline in the view, model mm: the part's outline with its arcs where the sheet is seen square, else
// the convex hull of its box (exact for boxes; parts with arcs are seen square or edge on).
std::vector<Segment> silhouette(const Part& part, const Seen& seen);
Box2 box_of(const std::vector<Segment>& loop);
// A highest point of a loop: an end of one of its edges or the top of an arc.
Vec2 highest(const std::vector<Segment>& loop);

// Draws every bore: a circle where it is seen end on, else its walls (with `walls`, hidden or cut open) and
// axis.
void add_bores(Drawing& drawing, const Part& part, const Seen& seen, const View& view, const char* walls);

// "Ø6, counterbore ⌴Ø16 ↧50", with the signs of ISO 129-1 for counterbore and depth
std::string bore_text(const Bore& bore);

}  // namespace lamwright::drawing
