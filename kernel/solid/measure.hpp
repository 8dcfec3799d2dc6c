// Figures of a solid as it was really built. For exporters and tests; no OpenCASCADE in the interface.
#pragma once
#include <vector>

#include "kernel/solid/solid.hpp"

namespace lamwright {

double solid_volume(const Solid& solid);  // mm3; negative when inside out
Vec3 solid_centre(const Solid& solid);    // of mass, even density, own frame
Part::Box solid_box(const Solid& solid);  // exact, without tolerances

// What a solid is made of. A sound part has one solid, one shell, no other faces and no free edges.
struct ShapeCounts {
  int solids = 0;       // 1 unless it fell apart
  int shells = 0;       // 1 unless it has a cavity
  int planes = 0;       // flat faces
  int cylinders = 0;    // walls of bores and curved edges
  int other_faces = 0;  // neither plane nor cylinder
  int edges = 0;        // each counted once
  int free_edges = 0;   // used by one face only, seams left out
};
ShapeCounts shape_counts(const Solid& solid);  // of the whole shape

// One face that lies on a cylinder. mm, own frame.
struct CylinderFace {
  Vec3 point{0, 0, 0};      // on the axis, at the face's lower end
  Vec3 direction{0, 0, 1};  // unit, from the lower to the upper end
  double radius = 0;        // mm
  double length = 0;        // along the axis, mm
  bool full = false;        // goes all the way round
  bool hollow = false;      // the wood lies outside: a bore's wall or a hollow edge
};
std::vector<CylinderFace> cylinder_faces(const Solid& solid);  // in the order of the solid's faces

double greatest_tolerance(const Solid& solid);  // of its faces, edges and vertices, mm

// Slow; for tests. The first grows with the square of the mouths in one face, the second looks for faces that
// meet where they should not, which the first does not see.
bool is_valid(const Solid& solid);
bool meets_itself(const Solid& solid);  // or has edges too short to tell from a point

}  // namespace lamwright
