// What bores and counterbores leave of a beam.
#pragma once
#include "kernel/job/job.hpp"

namespace lamwright {

// Section of a beam through a foot screw: its counterbore from below and the bore above it taken out.
struct NetSection {
  double inertia = 0;  // second moment of area, mm4
  double modulus = 0;  // least section modulus, mm3
};
NetSection net_section(const BeamSpec& beams);

// Bending stress at a foot screw, MPa, of a beam bent to a curvature (1/mm) that its whole sections set: a
// few bores hardly change how it bends.
double beam_stress(const BeamSpec& beams, double curvature);

// The same beam of another depth, its screws as much longer.
BeamSpec deeper(const BeamSpec& beams, double depth);

}  // namespace lamwright
