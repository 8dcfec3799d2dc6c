// A press of two halves with its straps: what the two-part and the crowned flat press have in common.
#pragma once
#include "kernel/press/mould/assemble.hpp"
#include "kernel/press/two_part/loops.hpp"
#include "kernel/press/two_part/pins.hpp"

namespace lamwright::two_part {

// Two halves with their cauls, stations and loops.
struct Rig {
  const Job& job;
  const Panel& panel;
  Stations stations;
  Halves halves;
  LaidCaul bed, top;  // on the lower and the upper mould
  FixingBlocks lower_fixing, upper_fixing;
  LocatingPins located;
  double stroke = 0;  // by which the upper half lifts
  Loops loops;
  std::vector<double> screws;  // of both feet, in the lower beam's own X
};

// Throws Error (geometry) when straps are switched off or something does not fit.
Rig rig(const Job& job, const Panel& panel, const HalvesSpec& halves);

// A plan without the parts that depend on the method: reason, pull and load.
PressPlan plan_of(const Rig& rig, const std::string& method);

// Room left when the press is open: between the upper half's lowest point and the pack, and over the pack as
// it is lifted off its pins.
inline constexpr double kOpenClear = 20;

}  // namespace lamwright::two_part
