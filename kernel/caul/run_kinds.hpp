// The runs of a caul sorted by what they may be made of, and the search for the cheapest.
#pragma once
#include <vector>

#include "kernel/caul/run_choices.hpp"
#include "kernel/caul/schedule.hpp"

namespace lamwright {

// Runs of one kind have the same width, joints and patterns.
struct ListedKind {
  RunKind kind;
  double width = 0;
  int most_pieces = 1;
  JointPatterns patterns;  // besides one length
  bool laid = false;       // exactly as its one pattern says: neither in one length instead nor left out
};

struct RunKinds {
  std::vector<ListedKind> kinds;
  std::vector<std::size_t> kind_of;  // of each run
};

RunKinds run_kinds(const ScheduleSpec& spec);

struct SolvedRun {
  Joints joints;
  SlatChoice choice;  // no slats: not made
};

struct SolvedRuns {
  std::vector<SolvedRun> runs;
  bool proven = true;
};

// The least by the order that schedule.hpp tells.
SolvedRuns solve(const ScheduleSpec& spec, const RunKinds& kinds);

// The same with as many slats of every stock as it takes; runs of `kept` that are made stay as they are.
SolvedRuns solve_uncounted(const ScheduleSpec& spec, const RunKinds& kinds, const SolvedRuns& kept);

}  // namespace lamwright
