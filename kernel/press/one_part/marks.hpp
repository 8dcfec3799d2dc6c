// Marks on the parts of a one-part press, so that a stored mould can be rigged again.
#pragma once
#include "kernel/press/one_part/frame.hpp"

namespace lamwright::one_part {

// On a former's face: centre line, both ends of the blank, trim lines, left and right, the job, a blank to
// write the station into. Texts stand on the wood and clear of the bores that open in the face; they get
// smaller where there is little room, and a long title is cut.
std::vector<Mark> former_marks(const Job& job, const PressFrame& frame, const Part& former,
                               std::size_t formers);

// On a beam's side, in the beam's own frame: the same, the blank's ends dropped square onto the beam.
std::vector<Mark> beam_marks(const Job& job, const PressFrame& frame, const Part& beam, std::size_t formers);

}  // namespace lamwright::one_part
