// Whether beams, feet, pins and screws carry what the straps put on them.
#pragma once
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/masses.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

std::vector<Finding> structure_findings(const Job& job, const PressPlan& plan,
                                        const std::optional<PressureMap>& map, const Masses& masses);

// Section of a beam through a foot screw: its counterbore from below and the bore above it taken out.
struct NetSection {
  double inertia = 0;  // second moment of area, mm4
  double modulus = 0;  // least section modulus, mm3
};
NetSection net_section(const BeamSpec& beams);

}  // namespace lamwright
