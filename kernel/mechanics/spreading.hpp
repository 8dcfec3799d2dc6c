// How slatted cauls spread the pull of straps along the width: two beams with the pack between them.
#pragma once
#include <vector>

namespace lamwright {

// An even load of `force` N per mm of girth over `width` mm about z = `at`.
struct Patch {
  double at = 0;     // mm from the near edge
  double width = 0;  // mm, above 0
  double force = 0;  // all of it, N per mm of girth
};

// Per mm of girth; z runs along the width from 0 to `width`, where bed and slats end. The lower slats are
// held at the supports (formers, knife edges, both ways: they are screwed); the upper ones carry the loads.
// The bed pushes but never pulls. `lower`, `upper` > 0: EI, N mm2 per mm of girth; `bed` > 0: N/mm3.
//
// Source: beams on an elastic foundation (Hetenyi), cubic Hermite elements with a consistent foundation
// matrix; the bed's pressure converges with the fourth power of the element's length as long as nothing
// lifts.
struct SpreadingSpec {
  double width = 0;              // of the pack, mm
  double lower = 0, upper = 0;   // above 0
  double bed = 0;                // above 0
  std::vector<double> supports;  // two at least, inside 0 to width
  std::vector<Patch> loads;      // cut off at the pack's edges, their force kept
  double even = 0;               // further load on the upper slats, MPa
  double longest = 0;            // element; 0: a quarter of the bed's characteristic length, at most 12 mm
};

// The answer at stations from edge to edge. Loads scaled by a factor scale everything by it.
struct Spreading {
  std::vector<double> z;                      // ascending, element ends and middles
  std::vector<double> pressure;               // of the bed, MPa, 0 where it lifts
  std::vector<double> sag;                    // of the lower slats below the formers' tops, mm
  double least = 0, mean = 0, greatest = 0;   // pressure; mean = all loads over the width
  double lower_moment = 0, upper_moment = 0;  // greatest, N mm per mm of girth
  double greatest_sag = 0;                    // of the lower slats, either way
  double reaction = 0;                        // greatest of the supports, N per mm of girth

  double even() const { return mean > 0 ? least / mean : 0; }  // 1 is even, 0 where the bed lifts
  double at(double station) const;  // pressure there, straight between the stations
};

// EI of lower slats that do not give between supports `apart`: their sag there is below a hundred-thousandth
// of the bed's. Much stiffer ones would spoil the equations.
inline double rigid_base(double bed, double apart) { return 1e3 * bed * apart * apart * apart * apart; }

// Throws Error (internal) outside the domains above.
Spreading spread(const SpreadingSpec& spec);

}  // namespace lamwright
