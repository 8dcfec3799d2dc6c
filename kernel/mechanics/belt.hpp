// Tension and pressure of a strap over a curve: belt friction (Euler-Eytelwein, T2 = T1 e^(mu angle)).
#pragma once

namespace lamwright {

// Tension in N where the strap has turned through `from_left` and `from_right` (radians, exit bends included)
// from the ratchets that pull with `left` and `right` N; friction mu >= 0.
double strap_tension(double left, double from_left, double right, double from_right, double mu);

// Pressure in MPa on a face of curvature k (1/mm) under straps `pitch` mm apart: T k / pitch; 0 on flats and
// hollows.
double strap_pressure(double tension, double curvature, double pitch);

}  // namespace lamwright
