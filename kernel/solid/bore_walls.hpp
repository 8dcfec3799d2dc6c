// The walls, shelves and ends of a bore that is joined to flat faces. Internal to kernel/solid.
#pragma once
#include <optional>
#include <vector>

#include "kernel/part/part.hpp"
#include "kernel/solid/faces.hpp"

namespace lamwright {

// A bore as it is really joined: its mouth exactly on the face it enters, its axis exactly square to it.
// Bores are given to within kSamePoint, solids are made to kSolid. Own frame.
struct StraightBore {
  Vec3 mouth;
  Vec3 axis;   // unit, into the wood
  Vec3 along;  // unit, in the face
  double length = 0;
};

// Nothing when the bore must be cut instead: its mouth is not flat, or the face it leaves by is not square to
// it.
std::optional<StraightBore> straightened(const Part& part, const Bore& bore);

struct BoreFaces {
  std::vector<TopoDS_Face> faces;
  Loop mouth;  // inner loop of the face it enters
  Loop exit;   // of the face it leaves by; empty for a blind bore
};
BoreFaces bore_faces(const Bore& bore, const StraightBore& straight);

// Faces that a bore adds to a solid: a wall for each diameter, a shelf between them, a flat end when blind.
int faces_of(const Bore& bore);

}  // namespace lamwright
