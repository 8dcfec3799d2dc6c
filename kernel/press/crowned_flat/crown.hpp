// Contact edges that are straight once the straps are tight: crowned by what the beams then give.
#pragma once
#include "kernel/mechanics/sag.hpp"
#include "kernel/profile/profile.hpp"

namespace lamwright::crowned_flat {

// A straight line of the profile's length bent back from its middle like the beam, to lines and arcs: sense
// +1 bulges to the outer side, -1 to the inner side. The middle stays where it is. The result lies within
// kCrownTolerance of the beam's own curve.
Profile crowned(const Profile& straight, const EvenBeam& beam, int sense);

inline constexpr double kCrownTolerance = 0.005;  // mm: far below what a router follows

}  // namespace lamwright::crowned_flat
