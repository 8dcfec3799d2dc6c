// What one tool takes out of a part: a cylinder of a bore, and the mouths where it meets the side.
#pragma once
#include <optional>
#include <vector>

#include "kernel/part/surface/rails.hpp"

namespace lamwright::surface {

// In sheet coordinates. x, y and -axis are right-handed: seen from where the tool enters, x and y are right
// and up. Where it enters or leaves the side, x runs along the outline's plane and y is +w.
struct Cutter {
  Vec3 at;  // where the bore begins
  Vec3 axis;
  Vec3 x, y;
  double radius = 0;
  double from = 0, to = 0;  // along the axis
  int enters = kNoFace;     // by none: it goes on from a counterbore
  int leaves = kNoFace;     // by none: it ends in a flat bottom, or a shoulder
};

// Of a bore the counterbore, where it has one, and the bore itself.
std::vector<Cutter> cutters_of(const Part& part, const Bore& bore);

inline bool is_side(int face) { return face >= 0; }

// Where a cutter goes through the side.
struct Mouth {
  Vec2 at;      // where its axis meets the outline
  Vec2 across;  // unit, square to the axis, the way the rails run
  double w = 0, radius = 0;
  int edge = 0;  // that its axis meets

  double reach(const Vec2& p) const { return (p - at).dot(across); }  // of p beside the axis
};
std::optional<Mouth> entry_mouth(const Cutter& cutter);
std::optional<Mouth> exit_mouth(const Cutter& cutter);

// The rails that a mouth spans: from the last one before it to the first one after it, and those between.
// `last` may exceed the count of rails, `first` may be negative.
struct Span {
  int first = 0, last = 0;
};
// Throws Error (geometry, at `part`) where the side within the mouth lies along the axis or turns back.
Span span(const Mouth& mouth, const Rails& rails, const std::string& part);
// Where a mouth begins and ends on its rails.
std::vector<OnChord> ends(const Mouth& mouth, const Rails& rails, const std::string& part);

}  // namespace lamwright::surface
