// Beams and bearers under the formers.
#pragma once
#include "kernel/press/mould/foot.hpp"
#include "kernel/press/mould/timber.hpp"
#include "kernel/press/one_part/frame.hpp"

namespace lamwright::one_part {

// Bores of a beam as stations along X, and the marks that its straps then hook to.
struct BeamLayout {
  std::vector<double> screws;
  std::vector<double> left_holes, right_holes;  // strap holes, left to right; empty without straps
  double from = 0, to = 0;                      // ends of the beam
  StrapEnd left, right;                         // with the bore nearest the mark as the mark

  TimberSpec timber() const;
};

// Moves a strap row outward by the least that clears the screws; where the strap would then leave outside 20
// to 30 degrees, moves the screw instead, never the centre one. Foot screws also keep clear of `obstacles`
// in the former. Throws Error (geometry) with the angle when nothing clears.
BeamLayout beam_layout(const Job& job, const PressFrame& frame, const Mould& mould, bool strapped,
                       const std::vector<Obstacle>& obstacles);

}  // namespace lamwright::one_part
