// The cheapest options for a row of runs, neighbour by neighbour, within the stock.
#pragma once
#include <optional>
#include <vector>

#include "kernel/caul/run_choices.hpp"

namespace lamwright {

// Slats of one length that runs share.
struct SharedSlats {
  double length = 0;                 // no more than a run's: the rest of a slat is no use
  std::optional<std::size_t> count;  // index of ChainSpec::counts; not given: as many as are needed
};

// What there is for a kind of run, longest first.
std::vector<SharedSlats> shared_slats(const RunKind& kind, double length, const ChoiceStock& stock);

// What one kind of run draws on.
struct DrawnOn {
  std::size_t rack = 0;  // of ChainSpec::racks
  bool in_one = false;   // through runs
};

struct ChainSpec {
  double length = 0;                            // of a run
  std::vector<std::vector<RunOption>> kinds;    // what each kind of run may be; some chain of them must exist
  std::vector<std::size_t> kind_of;             // of each run
  std::vector<int> counts;                      // of each counted stock
  std::vector<std::vector<SharedSlats>> racks;  // longest first
  std::vector<DrawnOn> draws;                   // of each kind
  double bridge = 0;
};

struct ChainLink {
  std::size_t option = 0, choice = 0;  // within the run's kind
};

struct RunChain {
  RunCost cost{};
  std::vector<ChainLink> links;
  bool proven = true;  // false: the search was cut short, a cheaper chain may exist
};

enum class Effort { quick, full };

// Exact as long as few part-made chains stay open at a run; then the best found. Bounded by work,
// deterministic.
RunChain cheapest_chain(const ChainSpec& spec, Effort effort);

}  // namespace lamwright
