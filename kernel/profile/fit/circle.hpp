// Circles through points in any order.
#pragma once
#include <optional>
#include <vector>

#include "kernel/profile/vector.hpp"

namespace lamwright {

struct Circle {
  Vec2 centre{0, 0};
  double radius = 0;
};

// The circle A (x^2 + y^2) + B x + C y + D = 0 whose left side is least over the points, by squares, for a
// mean square gradient of 1 (G. Taubin, IEEE Trans. PAMI 13, 1991): moves and turns with the points, nearly
// without bias on short arcs. None for fewer than three points or points on one line.
std::optional<Circle> algebraic_circle(const std::vector<Vec2>& points);

// The circle of least squares of the distances (W. Gander, G. Golub, R. Strebel, BIT 34, 1994, 558), from the
// algebraic one. None as there.
std::optional<Circle> geometric_circle(const std::vector<Vec2>& points);

}  // namespace lamwright
