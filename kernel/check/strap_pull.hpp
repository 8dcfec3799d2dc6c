// The straps of a one-part press: tension round the curve and force on the end slats.
#pragma once
#include <optional>

#include "kernel/job/job.hpp"
#include "kernel/mechanics/strap_line.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// The straps of a one-part press in the plane of one former.
struct StrapPull {
  StrapLine line;           // the top caul's outer line from where one end of the strap leaves to the other
  double from = 0, to = 0;  // the same ends as stations on the neutral line
  double left = 0, right = 0;            // N at the ratchets; 0 at an end without one
  double exit_left = 0, exit_right = 0;  // radians
  double friction = 0;                   // between strap and caul
  double pitch = 0;                      // greatest distance from strap to strap

  // `station` on the caul's line.
  double tension(double station) const;
  // Force of the end slat on the pack, N per mm of width: 2 T sin(exit / 2) / pitch.
  double end_force(bool at_left) const;
};
// Nothing for a press without straps over the pack.
std::optional<StrapPull> strap_pull(const Job& job, const PressPlan& plan);
// Station on the pull's line of a station on the neutral line.
double on_strap(const PressPlan& plan, const StrapPull& pull, double neutral_station);

}  // namespace lamwright
