// The edges of a sheet's outline as a solid's side faces. Internal to kernel/solid.
#pragma once
#include <vector>

#include "kernel/part/part.hpp"
#include "kernel/solid/faces.hpp"

namespace lamwright {

// near and far run along the outline (anticlockwise seen from the far side), `up[i]` from the near to the far
// end of the corner where outline edge i begins.
struct SideEdges {
  Loop near;
  Loop far;
  std::vector<TopoDS_Edge> up;
};
SideEdges side_edges(const Part& part);

// The side face of outline edge i with the mouths of the bores that open in it (only straight edges have
// any).
TopoDS_Face side_face(const Part& part, const SideEdges& edges, std::size_t i,
                      const std::vector<Loop>& mouths);

// The two flat faces with theirs.
TopoDS_Face near_face(const Part& part, const SideEdges& edges, const std::vector<Loop>& mouths);
TopoDS_Face far_face(const Part& part, const SideEdges& edges, const std::vector<Loop>& mouths);

}  // namespace lamwright
