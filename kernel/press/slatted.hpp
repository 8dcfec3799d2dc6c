// Slatted cauls as pieces of a press: the schedule of their slats, and each slat at its place.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Adds plan.cauls, the slats' parts and bodies, and notes about what the stock lacks. A slat lies flat
// against the line it is screwed to or rests on, without standing in it: over a crown it touches with its
// middle, in a hollow with its edges. Slats over a caul pilot of a former are bored for its screws, heads
// sunk on the pack's side. A run that the stock cannot give is laid as one slat of the caul's length, to be
// got.
void add_slats(const Job& job, PressPlan& plan);

// Stations on a caul's inner line of the screws that hold its slats to the formers; none for a caul that lies loose.
std::vector<double> caul_screw_stations(const PressPlan& plan, const Layer& layer);

// Clearance bore and sinking of a caul screw, mm: a countersunk head is twice its diameter (DIN 7997, from
// memory).
inline constexpr double kSlatBore = 4.5, kSlatHead = 8, kSlatHeadDepth = 3;

}  // namespace lamwright
