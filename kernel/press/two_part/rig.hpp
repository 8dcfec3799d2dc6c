// A press of two halves with its straps: what the two-part and the crowned flat press have in common.
#pragma once
#include "kernel/press/mould/assemble.hpp"
#include "kernel/press/two_part/loops.hpp"

namespace lamwright::two_part {

// Two halves with their cauls, stations and loops.
struct Rig {
  const Job& job;
  const Panel& panel;
  Stations stations;
  Halves halves;
  LaidCaul bed, top;  // on the lower and the upper mould
  FixingBlocks lower_fixing, upper_fixing;
  Loops loops;
  double stroke = 0;
  std::vector<double> screws;  // of both feet, in the lower beam's own X
};

// Throws Error (geometry) when straps are switched off or something does not fit.
Rig rig(const Job& job, const Panel& panel, const HalvesSpec& halves);

// A plan without the parts that depend on the method: reason, pull and load.
PressPlan plan_of(const Rig& rig, const std::string& method);

// By which the upper half lifts so that its lowest point clears the pack.
inline constexpr double kOpenClear = 20;

}  // namespace lamwright::two_part
