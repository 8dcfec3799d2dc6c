// Bending of a beam that two straps hold at its ends while the pack pushes evenly against its middle.
#pragma once

namespace lamwright {

// Supports at +-half_span, an even load (N/mm) over +-half_load <= half_span, stiffness EI in N mm2.
// Euler-Bernoulli beam.
struct EvenBeam {
  double half_span = 0;  // mm
  double half_load = 0;  // mm, above 0
  double load = 0;       // N/mm
  double stiffness = 0;  // above 0

  // Moment over stiffness at x from the middle, 1/mm; 0 outside the supports.
  double curvature(double x) const;
  // Slope at x, radians, positive on the right where it bends back.
  double slope(double x) const;
  // How far a point at x is bent back from the middle, mm: 5 q L^4 / (384 EI) at the supports when the load
  // reaches them. |x| <= half_span.
  double sag(double x) const;
};

// Second moment of area of a rectangle bent about its width, mm4.
double second_moment(double width, double depth);

}  // namespace lamwright
