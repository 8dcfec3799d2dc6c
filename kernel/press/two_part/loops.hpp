// Straps of a two-part press: closed loops round both beams, one at each side of the formers.
#pragma once
#include "kernel/press/assembly.hpp"
#include "kernel/press/mould/timber.hpp"
#include "kernel/press/two_part/halves.hpp"

namespace lamwright::two_part {

struct LoopsSpec {
  const Job& job;
  const Halves& halves;
  std::vector<double> screws;  // of the lower beam, in its own X
  Box2 inside;                 // everything between the loops, in the frame of the press
  double stroke = 0;           // by which the upper half lifts
};

struct Loops {
  double reach = 0;  // of each loop from the pull line
  StrapEnd left, right;
  Loop loop;
  TimberSpec lower_beam, upper_beam;  // in the beam's own X, upper turned over
};

// The loops stand as near to the pull line as keeps their inner edge 10 clear of what lies between them.
Loops loops(const LoopsSpec& spec);

// Stops that keep loops from sliding square to beams that lean; nothing where the beams are level or the
// straps hook to pins. At the mid-plane of a former at Z.
void add_stops(const Job& job, const Halves& halves, const Loops& loops, double z, AssemblyBuilder& assembly);

// Where screws go through a stop, across the beam: two, or one in the middle of a narrow beam.
std::vector<double> stop_screws(const BeamSpec& beams);

inline constexpr double kLoopClear = 10;
inline constexpr double kStopLength = 40, kStopHeight = 20;
inline constexpr double kStopScrew = 5, kStopScrewLength = 60;

}  // namespace lamwright::two_part
