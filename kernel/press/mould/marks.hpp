// Marks on the parts of a press, so that a stored mould can be rigged again.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/mould/mould.hpp"

namespace lamwright {

// The contact edge of a former in the part's own frame. `wood` is -1 where the wood lies under it, +1 where
// it lies over it; `foot` is the height of the former's foot at X = 0.
struct MarkedEdge {
  const Profile& contact;
  double left_extend = 0, right_extend = 0;
  int wood = -1;
  double foot = 0;
};

// On a former's face: centre line, both ends of the blank, trim lines, left and right, the job, a blank to
// write the station into. Texts stand on the wood and clear of the bores that open in the face; they get
// smaller where there is little room, and a long title is cut.
std::vector<Mark> former_marks(const Job& job, const MarkedEdge& edge, const Part& former,
                               std::size_t formers);

// Where the blank's ends and the trim lines drop onto a beam: X in the beam's own frame.
struct BeamTicks {
  std::vector<double> blank_ends, trim_lines;
};
// The ticks under a curve, dropped along the pull on a beam that leans by `tilt` (radians).
BeamTicks beam_ticks(const Profile& inner, double trim, double tilt);

// On a beam's side, in the beam's own frame: the same, the blank's ends dropped onto the beam.
std::vector<Mark> beam_marks(const Job& job, const BeamTicks& ticks, const Part& beam, std::size_t formers);

}  // namespace lamwright
