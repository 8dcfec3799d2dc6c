// Draws paths in mm.
#pragma once
#include "kernel/profile/drawn/affine.hpp"
#include "kernel/profile/drawn/drawn.hpp"
#include "kernel/reading/svg/limits.hpp"
#include "kernel/reading/svg/notes.hpp"
#include "kernel/reading/svg/path_step.hpp"

namespace lamwright::svg_reading {

// Who draws.
struct Artist {
  std::string id;
  std::vector<std::string> layers;
  std::string what;  // "path \"inner\" (line 12)"
  Place where;
};

// One curve for each subpath that has a length, with `to_mm` applied (a map that does not flatten).
// - Arcs that are circular under the map, but for 1e-6 of the radius (digits of a single-precision number),
//   are segments; a full circle is two of one centre and radius. Other elliptic arcs are rational quadratic
//   curves of at most 90 degrees.
// - Curves whose poles lie on a line are lines.
// - Points nearer than 1e-6 mm are one. Curves shorter than 1e-4 mm and arcs of a radius below 1e-3 mm are
//   lines, or points when their ends are one; so are arcs of a radius beyond 1e9 mm that rise no more than
//   1e-3 mm over their chord.
// - A subpath whose ends are one is closed, whether the file closes it or not.
// Throws Error (job) for what reaches beyond 1e7 mm, for radii beyond 1e9 mm, and for too many pieces.
std::vector<DrawnCurve> drawn(const PathSteps& steps, const Affine& to_mm, const Artist& artist,
                              Limits& limits, Notes& notes);

}  // namespace lamwright::svg_reading
