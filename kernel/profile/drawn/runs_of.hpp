// A drawn chain as a profile: lines and arcs as they are, free curves by the fewest runs within a tolerance.
#pragma once
#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright {

struct RunsSpec {
  double tolerance = 0.05;  // greatest distance between the drawn chain and the profile, mm
  double ease = 0;          // > 0: radius (mm) that rounds kinks between lines
  bool fit_kinks = false;  // a chain with kinks is fitted as a whole, as one drawn in many short chords needs
};

struct RunsResult {
  Profile profile;       // walked as drawn
  bool fitted = false;   // false: every run is a line or arc of the drawing
  double deviation = 0;  // greatest distance along the whole chain, mm
  double kink = 0;       // greatest turn at a joint that was taken as tangent, radians, positive
  std::size_t tiny = 0;  // pieces below 0.05 mm that were left out
};

// `chain` in order, each piece beginning where the one before ends or within a joining distance of there.
// Throws Error (geometry) for kinks (see easing.hpp; with fit_kinks, for those that only a bend below 5
// mm would follow) and for curves that no runs follow within the tolerance.
RunsResult runs_of(const std::vector<DrawnPiece>& chain, const RunsSpec& spec);

}  // namespace lamwright
