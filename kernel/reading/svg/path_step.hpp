// What a path or shape tells a pen to do, in user units of the element, absolute, Y down.
#pragma once
#include <variant>
#include <vector>

#include "kernel/reading/svg/elliptic_arc.hpp"

namespace lamwright::svg_reading {

struct MoveTo {
  Vec2 to;
};
struct LineTo {
  Vec2 to;
};
struct QuadraticTo {
  Vec2 pole, to;
};
struct CubicTo {
  Vec2 first_pole, second_pole, to;
};
struct ArcTo {
  EllipticArc arc;
  Vec2 to;
};
struct Close {};

using PathStep = std::variant<MoveTo, LineTo, QuadraticTo, CubicTo, ArcTo, Close>;
using PathSteps = std::vector<PathStep>;  // a MoveTo comes first

}  // namespace lamwright::svg_reading
