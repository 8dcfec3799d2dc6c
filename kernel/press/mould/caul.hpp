// A caul as it lies on a mould's contact edge, and where its screws go.
#pragma once
#include "kernel/press/mould/curves.hpp"
#include "kernel/press/mould/mould.hpp"

namespace lamwright {

// Slats by stations on the line that they lie on, a liner's thickness from the contact edge; pilots by
// stations on mould.contact.
struct LaidCaul {
  std::vector<Slat> slats;  // empty: continuous
  std::vector<double> pilots;
};

// The bed caul covers the whole contact edge of the lower mould.
LaidCaul bed_caul(const Job& job, const Panel& panel, const PressCurves& curves, const Mould& lower);

// The top caul, screwed to an upper mould: its slats lie within the pack, as `curves.top_slats` on the cover
// sheet. `upper` stands on its head, so its stations run from the right end.
LaidCaul top_caul(const Job& job, const Panel& panel, const PressCurves& curves, const Mould& upper);

inline constexpr double kCaulScrew = 4;  // diameter
// "screw 4 x 58": through the caul, its pilot's depth into the wood.
std::string caul_screw(const CaulSpec& caul);
inline constexpr double kCaulPilot = 3, kCaulPilotDepth = 30;

}  // namespace lamwright
