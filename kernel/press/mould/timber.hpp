// Beams and bearers as parts: timber along and under a mould's foot.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/part/part.hpp"

namespace lamwright {

// Bores as stations along X; `from` and `to` are the ends.
struct TimberSpec {
  double from = 0, to = 0;
  std::vector<double> screws;
  std::vector<double> strap_holes;
};
Part beam_part(const Job& job, const TimberSpec& spec);
// Under a former without a strap: with foot screws, or with a groove for the former's foot and no screws.
Part bearer_part(const Job& job, const TimberSpec& spec);

// Drop of the strap holes under the beam's top: two thirds of its depth.
double strap_drop(const BeamSpec& beams);
// Height of the strap holes above the beam's underside.
double hole_height(const BeamSpec& beams);
// Of the counterbore for a foot screw's head, from the beam's underside.
double counterbore_depth(const BeamSpec& beams);

inline constexpr double kBeamPastHole = 60;

}  // namespace lamwright
