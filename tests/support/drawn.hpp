// Drawn curves for tests.
#pragma once
#include "kernel/profile/drawn/chaining.hpp"
#include "kernel/profile/drawn/runs_of.hpp"
#include "shared/units.hpp"

namespace lamwright::test {

inline DrawnCurve drawn(std::vector<DrawnPiece> pieces, std::string id = {},
                        std::vector<std::string> layers = {}) {
  return {std::move(id), std::move(layers), "a curve", std::move(pieces), false};
}

// Each piece a curve of its own, as in a drawing whose pieces are loose.
inline std::vector<DrawnCurve> loose(const std::vector<Segment>& pieces) {
  std::vector<DrawnCurve> out;
  for (const Segment& piece : pieces) out.push_back(drawn({piece}));
  return out;
}

inline Profile profile_from(const std::vector<Segment>& pieces, double join = 0.01, double ease = 0) {
  RunsSpec spec;
  spec.ease = ease;
  return runs_of(chained(loose(pieces), join).pieces, spec).profile;
}

inline Segment arc(const Vec2& from, const Vec2& to, const Vec2& centre, double turn_deg) {
  return {from, to, radians(turn_deg), centre, (from - centre).norm()};
}

// Quarter of an ellipse about the origin from (a, 0) to (0, b), exact: weights 1, sqrt(1/2), 1.
inline Bezier quarter_ellipse(double a, double b) {
  return {{{a, 0}, {a, b}, {0, b}}, {1, std::sqrt(0.5), 1}};
}

}  // namespace lamwright::test
