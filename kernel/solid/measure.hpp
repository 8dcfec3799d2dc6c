// Figures of a solid as it was really built. For exporters and tests; no OpenCASCADE in the interface.
#pragma once
#include <vector>

#include "kernel/solid/solid.hpp"

namespace lamwright {

double solid_volume(const Solid& solid);  // mm3; negative when inside out
Vec3 solid_centre(const Solid& solid);
Part::Box solid_box(const Solid& solid);  // exact, without tolerances

struct ShapeCounts {
  int solids = 0;
  int shells = 0;
  int planes = 0;
  int cylinders = 0;
  int other_faces = 0;
  int edges = 0;       // each counted once
  int free_edges = 0;  // used by one face only, seams left out
};
ShapeCounts shape_counts(const Solid& solid);

struct CylinderFace {
  Vec3 point{0, 0, 0};  // on the axis, at the face's lower end
  Vec3 direction{0, 0, 1};
  double radius = 0;
  double length = 0;
  bool full = false;    // goes all the way round
  bool hollow = false;  // the wood lies outside: a bore's wall or a hollow edge
};
std::vector<CylinderFace> cylinder_faces(const Solid& solid);

double greatest_tolerance(const Solid& solid);

// Slow; for tests. The first grows with the square of the mouths in one face, the second looks for faces that
// meet where they should not, which the first does not see.
bool is_valid(const Solid& solid);
bool meets_itself(const Solid& solid);

}  // namespace lamwright
