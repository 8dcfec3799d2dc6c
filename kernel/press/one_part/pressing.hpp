// Pressing beams over the flats of the blank.
#pragma once
#include "kernel/press/one_part/frame.hpp"

namespace lamwright::one_part {

// Flats of the blank with the clamp holes of their pressing beams, in the frame of the press.
std::vector<FlatPressed> flats(const Job& job, const PressFrame& frame, const Panel& panel);

// A pressing beam as it lies over a flat in the plane of a former, its middle plane at Z = 0 of the frame.
struct PressingBeam {
  Part part;
  Frame placed;
  bool grooved = false;  // a strap as wide as the beam needs no groove: the beam bears on it
};
PressingBeam pressing_beam(const Job& job, const PressFrame& frame, const Panel& panel,
                           const FlatPressed& flat, bool strapped);

inline constexpr double kClampInside = 50;  // wood between contact edge and clamp hole

}  // namespace lamwright::one_part
