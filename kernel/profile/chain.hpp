// A profile from lines and arcs that somebody drew: checks that each joint meets and is tangent.
#pragma once
#include "kernel/profile/segment.hpp"

namespace lamwright {

struct ChainSpec {
  std::vector<Segment> segments;  // in order, each beginning where the one before ends
  double join = 0.01;             // largest gap at a joint, mm
  double ease = 0;                // > 0: round every kink with a bend of this radius (mm) on its inner side
};

// Throws Error (geometry) for a gap (says where and how large) and for a joint that is not tangent: a
// lamination cannot have a kink. The message gives the point and the angle and offers `ease`. Between an arc
// and its neighbour a kink is never eased.
Profile profile_from(const ChainSpec& chain);

}  // namespace lamwright
