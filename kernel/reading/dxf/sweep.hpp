// How far an arc goes round.
#pragma once

namespace lamwright::dxf_reading {

// Parameters of an arc: where it begins and how far it goes on, radians, |turn| <= 2 pi.
struct Sweep {
  double from = 0;
  double turn = 0;
};

// From one angle on to another, anticlockwise: turn is over 0 and at most a full one. Equal angles, and
// angles that differ by full turns, make a full turn.
Sweep sweep(double from, double to);

}  // namespace lamwright::dxf_reading
