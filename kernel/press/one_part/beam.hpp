// Beams and bearers under the formers.
#pragma once
#include "kernel/press/one_part/frame.hpp"

namespace lamwright::one_part {

// Bores of a beam as stations along X, and the marks that its straps then hook to.
struct BeamLayout {
  std::vector<double> screws;
  std::vector<double> left_holes, right_holes;  // strap holes, left to right; empty without straps
  double from = 0, to = 0;                      // ends of the beam
  StrapEnd left, right;                         // with the bore nearest the mark as the mark
};

// Moves a strap row outward by the least that clears the screws; where the strap would then leave outside 20
// to 30 degrees, moves the screw instead, never the centre one. Foot screws also keep clear of `obstacles`
// (circles in the former, centre and radius). Throws Error (geometry) with the angle when nothing clears.
struct Circle {
  Vec2 centre{0, 0};
  double radius = 0;
};
BeamLayout beam_layout(const Job& job, const PressFrame& frame, bool strapped,
                       const std::vector<Circle>& obstacles);

Part beam_part(const Job& job, const BeamLayout& layout);
// Under a former without a strap: plain with foot screws, or with a groove for the former's foot and no
// screws.
Part bearer_part(const Job& job, const PressFrame& frame, const BeamLayout& layout);

inline constexpr double kScrewFromEnd = 40;
inline constexpr double kBeamPastHole = 60;

}  // namespace lamwright::one_part
