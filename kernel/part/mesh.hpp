// The surface of a part as triangles, for looking at. Made from the part's own description, without solids.
#pragma once
#include <array>
#include <cstdint>
#include <vector>

#include "kernel/part/part.hpp"

namespace lamwright {

// A closed surface: every edge belongs to two triangles that run along it in opposite directions (points at
// the same place count as one; they stand apart where faces meet in a sharp edge, so that each has its
// normal). mm.
struct Mesh {
  std::vector<Vec3> points;                             // corners that faces share come once for each face
  std::vector<Vec3> normals;                            // unit, outward, one a point
  std::vector<std::array<std::uint32_t, 3>> triangles;  // anticlockwise seen from outside
  std::vector<std::array<std::uint32_t, 2>> edges;      // sharp edges to draw, pairs of points

  double volume() const;  // enclosed, mm3
};

// How closely arcs are followed.
struct MeshSpec {
  double sag = 0.1;         // greatest distance of a chord from its arc, mm
  double turn = 0.26;       // greatest turn of a chord, radians (15 degrees)
  double bore_turn = 0.53;  // of bores, which are many and small (30 degrees)
};

// In the part's own frame, every bore cut: mouths, walls, counterbores, flat bottoms. Whatever the spec, the
// sag is at most a quarter of a thin part's thickness and 1.25, both turns at most 1. Throws Error (geometry)
// where the edge within a mouth lies along the bore's axis or turns back, Error (internal) unless all limits
// are positive.
Mesh mesh_of(const Part& part, const MeshSpec& spec = {});
// An outline in the plane of X and Y, carried on along Z from 0 to `thickness` > 0. Errors as above.
Mesh extruded(const Outline& outline, double thickness, const MeshSpec& spec = {});

}  // namespace lamwright
