// Where the joints of one run of a caul may lie.
#pragma once
#include <vector>

namespace lamwright {

// Width stations of a run's joints, near to far; none: the run is in one length.
using Joints = std::vector<double>;

// Every joint of one run keeps `bridge` from every joint of the other; both ascending.
bool staggered(const Joints& a, const Joints& b, double bridge);

// Stations where a joint is worth trying: slat ends laid from either end of the caul (any sum of `slats`),
// `at`, and one or two bridges beside all of these, rounded away to the whole mm as well. At least `bridge`
// from the ends; ascending. Slats `at` most 200 sums; above that only sums of the longest slat.
std::vector<double> joint_stations(double length, double bridge, const std::vector<double>& slats,
                                   const std::vector<double>& at);

struct JointSpec {
  double length = 0;             // of the run
  double bridge = 0;             // least length of a piece, above 0
  std::vector<double> slats;     // lengths in stock, ascending, not empty
  std::vector<double> stations;  // where joints may lie
  bool at_slat_ends = true;      // and wherever a whole slat ends that begins at a joint
  int most_pieces = 0;
};

// Pieces and cuts of the first group of patterns that was not listed to its end.
struct JointGroup {
  int pieces = 0, cuts = 0;
};

struct JointPatterns {
  std::vector<Joints> patterns;  // of two pieces and more; fewest pieces first, then fewest cuts
  JointGroup unlisted;           // {most_pieces + 1, 0} when all were listed
};

// All patterns up to most_pieces, as long as the work is bounded; from four pieces on only the longest slats
// are tried where there are many lengths. A cut is a piece that is no slat's length.
JointPatterns joint_patterns(const JointSpec& spec);

}  // namespace lamwright
