// Locating pins of a two-part press.
#pragma once
#include "kernel/press/mould/caul.hpp"
#include "kernel/press/plan.hpp"
#include "shared/units.hpp"

namespace lamwright::two_part {

struct LocatingPins {
  std::vector<Pin> pins;
  std::vector<std::string> notes;  // what keeps them out, and what they want of the cauls
};

// In the trim at both width ends, in the caul of the mould that first holds the pack (`first_contact`), in
// the gap nearest to there: of the near gaps one that a gap of the other caul lies opposite to, as wide as
// the pin needs on its way in. They stand at one place round the curve only, for everywhere else the pack has
// to slide while the press closes. Continuous cauls and sheathing have no gap: a bore on the pins' own side,
// a recess opposite. `curves` with the pull axis vertical.
LocatingPins locating_pins(const Job& job, const Panel& panel, const PressCurves& curves, const LaidCaul& bed,
                           double extend);

// How far along the pull the pack has to be lifted to pass over pins in the lower half. 0 where none stand
// there.
double room_over_pins(const Panel& panel, const Profile& neutral, const std::vector<Pin>& pins);

// No pins where the pack stands steeper to the pull than this: it would tear at them as the press closes.
// Common practice, no source.
inline constexpr double kSteepestPin = radians(60);

}  // namespace lamwright::two_part
