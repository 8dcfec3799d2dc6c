// A former, cut to a mould.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/mould/mould.hpp"

namespace lamwright {

struct FormerSpecs {
  const Job& job;
  const Mould& mould;
  std::vector<double> pilots;  // of caul screws: stations on the mould's contact edge
  std::vector<double> screws;  // of the foot: X
  std::vector<Vec2> clamps;    // centres of clamp holes
  bool grooved = false;        // foot let into a grooved bearer: longer, no foot pilots
  PartKind kind = PartKind::former_lower;
};

// In the mould's own frame; `to` takes it to the axes of the press.
// Contact edge, sides and foot, the foot carried on by a groove's depth.
Outline former_outline(const Mould& mould, double groove = 0);

Part former_part(const FormerSpecs& specs, const Frame& to = {});

}  // namespace lamwright
