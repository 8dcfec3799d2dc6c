// What one run of a caul may be made of, and what that costs.
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "kernel/caul/joint_patterns.hpp"

namespace lamwright {

// Compared from the front: runs not made, through and fixing runs among them, fixing runs with joints,
// pieces, saw cuts across, waste in thousandths of a mm, joints off the whole mm.
using RunCost = std::array<std::int64_t, 7>;
enum CostOf : std::size_t { kUnmade, kUnmadeHeld, kJointedFixings, kPieces, kCuts, kWaste, kOffWhole };

RunCost operator+(const RunCost& a, const RunCost& b);

// The slats of one run, near to far; no slats: the run is not made.
struct SlatChoice {
  RunCost cost{};
  std::vector<int> use;            // of each counted stock
  std::vector<std::size_t> stock;  // of each piece
};

// Ways to make a run with its joints at the same stations.
struct RunOption {
  Joints joints;
  bool anywhere = false;  // joints that never meet a neighbour's: for bounds, no real run
  std::vector<SlatChoice> choices;
};

struct RunKind {
  enum class Joint { none, on_formers, free };
  Joint joint = Joint::free;
  bool held = false;               // through or fixing
  std::vector<std::size_t> stock;  // what it may be made of
};

// Stock as the search sees it.
struct ChoiceStock {
  std::vector<double> lengths;
  std::vector<std::size_t> counted;  // stocks whose counts matter: others are as many as are needed
};

// Choices that no other beats in cost and in use of counted stock, cheapest first. Pieces lie between the
// joints.
std::vector<SlatChoice> slat_choices(const Joints& joints, double length, const RunKind& kind,
                                     const ChoiceStock& stock);

// Not making the run.
SlatChoice left_out(const RunKind& kind, const ChoiceStock& stock);

// The cheapest choices that a run with at least so many pieces and cuts could have wherever its joints lie.
// Where the stock has too many lengths to list them, one that costs no more than any of them.
RunOption joined_anywhere(JointGroup least, int most_pieces, double length, const RunKind& kind,
                          const ChoiceStock& stock);

// a costs and uses no more than b.
bool no_worse(const SlatChoice& a, const SlatChoice& b);

bool go_together(const RunOption& a, const RunOption& b, double bridge);

// Where there are too many choices to search, keeps some of each handful of slats: the cheapest and a spread
// of the others, so that joints can still be staggered. Options come in order of cost. True when choices were
// dropped.
bool thin_out(std::vector<RunOption>& options);

// Leaves out options that another one of the same kind of run replaces beside every neighbour.
void drop_beaten(std::vector<std::vector<RunOption>>& kinds, double bridge);

}  // namespace lamwright
