// A profile that a job gives, with what it was made from.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/profile/fit/fit.hpp"

namespace lamwright {

// How closely a drawing was followed. Lengths in mm.
struct DrawingFit {
  double tolerance = 0;    // that was kept
  double deviation = 0;    // greatest distance along the whole curve
  double largest_gap = 0;  // closed between loose pieces
  bool fitted = false;     // false: lines and arcs of the drawing as they are
};

// `profile` runs left to right with its outer side up. What was written down starts at the origin; what was
// measured or drawn lies where it was, in mm, Y up.
struct ProfileReading {
  Profile profile;                    // of the described face
  std::vector<Vec2> points;           // that were measured, in their own order
  std::optional<FitResult> fit;       // through those; its profile is this one
  std::optional<DrawingFit> drawing;  // of an SVG or DXF drawing alone
  std::vector<std::string> notes;     // sentences for the user: how the input was taken
};

}  // namespace lamwright
