// Vertices, edges and faces as the builder joins them. Internal to kernel/solid; coordinates are the part's
// own.
#pragma once
#include <vector>

#include "kernel/part/frame.hpp"

class TopoDS_Edge;
class TopoDS_Face;
class TopoDS_Vertex;

namespace lamwright {

// A closed chain of edges, each oriented as one walks it with the wood to the left, seen from outside.
using Loop = std::vector<TopoDS_Edge>;

TopoDS_Vertex vertex_at(const Vec3& at, double tolerance);
TopoDS_Edge line_edge(const TopoDS_Vertex& from, const TopoDS_Vertex& to, double tolerance);

// A cylinder: centre of its foot, x direction where the angle is 0, z its axis.
struct Round {
  Frame frame;
  double radius = 0;
};

// On the circle `height` along the axis, from angle 0 to `sweep`, anticlockwise about the axis.
TopoDS_Edge arc_edge(const Round& round, double height, double sweep, const TopoDS_Vertex& from,
                     const TopoDS_Vertex& to, double tolerance);

// The loops' first is the outer one. `along` is any direction in the plane.
TopoDS_Face plane_face(const Vec3& at, const Vec3& outward, const Vec3& along,
                       const std::vector<Loop>& loops);

// A cylinder face bounded by two arcs of the same sweep and the lines between their starts and their ends;
// for a full turn `start` and `end` are one edge, the seam. hollow: the wood lies outside the cylinder.
struct CylinderEdges {
  const TopoDS_Edge& foot;
  const TopoDS_Edge& head;
  const TopoDS_Edge& start;
  const TopoDS_Edge& end;
};
TopoDS_Face cylinder_face(const Round& round, double height, double sweep, const CylinderEdges& edges,
                          bool hollow);

}  // namespace lamwright
