// Curves as somebody drew them, before they become runs: lines, circular arcs, and free curves.
#pragma once
#include <string>
#include <variant>
#include <vector>

#include "kernel/profile/segment.hpp"

namespace lamwright {

// A rational Bezier curve of degree poles.size() - 1, at least 1. Weights are positive, one a pole; none
// means all 1. Elliptic arcs and splines are given as these without loss.
struct Bezier {
  std::vector<Vec2> poles;
  std::vector<double> weights;

  Vec2 point(double t) const;    // t from 0 to 1
  Vec2 tangent(double t) const;  // unit; (0, 0) when all poles fall together
  Bezier reversed() const;
  std::pair<Bezier, Bezier> split(double t) const;
};

using DrawnPiece = std::variant<Segment, Bezier>;

Vec2 first_point(const DrawnPiece& piece);
Vec2 last_point(const DrawnPiece& piece);
Vec2 first_tangent(const DrawnPiece& piece);  // unit, in the direction of travel
Vec2 last_tangent(const DrawnPiece& piece);
DrawnPiece reversed(const DrawnPiece& piece);

// One path, entity or element. In mm, Y up.
struct DrawnCurve {
  std::string id;                   // by which it can be chosen; empty when it has none
  std::vector<std::string> layers;  // layers and groups around it, the outermost first
  std::string what;                 // for messages: "path \"inner\"", "ARC on layer 0 (line 812)"
  std::vector<DrawnPiece> pieces;   // each begins where the one before ends
  bool closed = false;              // the last piece ends where the first begins
};

struct DrawnFile {
  std::vector<DrawnCurve> curves;
  std::vector<std::string> notes;  // sentences for the user: units taken, kinds of entity left out
};

}  // namespace lamwright
