// The former of a one-part press, its flats and clamp holes, and the blocks that go with it.
#pragma once
#include "kernel/press/one_part/beam.hpp"

namespace lamwright::one_part {

// Flats of the blank with the clamp holes of their pressing beams, in the frame of the press.
std::vector<FlatPressed> flats(const Job& job, const PressFrame& frame, const Panel& panel);

// Stations of caul-screw pilots on frame.contact.
struct BedCaul {
  std::vector<Slat> slats;  // on frame.contact; empty: continuous
  std::vector<double> pilots;
};
BedCaul bed_caul(const Job& job, const PressFrame& frame, const Panel& panel);

struct FormerSpecs {
  const Job& job;
  const PressFrame& frame;
  const BedCaul& bed;
  const std::vector<FlatPressed>& flats;
  const std::vector<double>& screws;
  bool grooved = false;  // foot let into a grooved bearer: longer, no foot pilots
};
Part former_part(const FormerSpecs& specs);

inline constexpr double kCaulPilot = 3, kCaulPilotDepth = 30;
inline constexpr double kClampInside = 50;  // wood between contact edge and clamp hole

}  // namespace lamwright::one_part
