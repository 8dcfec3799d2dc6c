// The outline of a part followed by chords: its rails are the points between them.
#pragma once
#include <vector>

#include "kernel/part/mesh.hpp"

namespace lamwright::surface {

// Places nearer than this are one rail, mm: above the rounding of large coordinates (1e-11) and far below
// anything that can be seen.
inline constexpr double kSnap = 1e-8;

// The spec as far as an outline allows it: chords of a thin strip must not cross it, nor come out of the wood
// beside a bore; and a circle needs some corners. Throws Error (internal) unless both limits are positive.
MeshSpec close_enough(const MeshSpec& spec, const Outline& outline);
// The least number of chords that follow an arc of a radius (mm) and turn (radians, any sign); 1 at least.
int chord_count(double radius, double turn, const MeshSpec& spec);

struct Rail {
  Vec2 at;
  int edge = 0;        // the outline's segment that the chord from here to the next rail follows
  bool sharp = false;  // the outline has a corner here
};

// A place on a chord: that from rail `chord` to the next one, at a share of its length.
struct OnChord {
  int chord = 0;
  double share = 0;
};

// A closed ring of rails, anticlockwise; indices wrap round both ways. Immutable.
class Rails {
 public:
  Rails(const Outline& outline, const MeshSpec& spec);
  Rails with(std::vector<OnChord> places) const;  // rails added there, those within kSnap of another left out

  int count() const { return int(rails_.size()); }
  const Rail& operator[](int i) const;
  Vec2 along(int chord) const;  // unit
  // Outward normal of the outline at a point of a chord; at its ends in smooth joints the same for both
  // chords.
  Vec2 outward(int chord, const Vec2& p) const;

 private:
  explicit Rails(std::vector<Segment> segments) : segments_(std::move(segments)) {}
  std::vector<Segment> segments_;
  std::vector<Rail> rails_;
};

}  // namespace lamwright::surface
