// B-spline curves, rational or not, and cubics through points, as Bezier pieces.
#pragma once
#include <optional>
#include <vector>

#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright::dxf_reading {

// poles.size() + degree + 1 knots that do not fall; weights positive, one a pole, or none.
struct Bspline {
  int degree = 3;
  std::vector<double> knots;
  std::vector<Vec2> poles;
  std::vector<double> weights;
};

// One piece for every span between knots that differ, from knot [degree] to knot [poles.size()]; polar forms
// evaluated by de Boor's recursion (Farin, Curves and Surfaces for CAGD, chapter on blossoms), which is what
// inserting each knot to full multiplicity gives. A knot of multiplicity `degree` leaves its kink at a joint.
// Where one of higher multiplicity tears the curve, the next piece begins apart from the end before.
std::vector<Bezier> bezier_pieces(const Bspline& spline);

// Cubic of continuous curvature through points, each apart from the one before, at parameters that grow by
// the chords. Curvature is 0 at an end (natural) unless a direction of travel (unit) is given there.
std::vector<Bezier> cubic_through(const std::vector<Vec2>& points, const std::optional<Vec2>& start,
                                  const std::optional<Vec2>& end);

}  // namespace lamwright::dxf_reading
