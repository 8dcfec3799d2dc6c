// Which way a drawn curve runs: left to right with the outer face up.
#pragma once
#include "kernel/profile/profile.hpp"

namespace lamwright {

// Where the outer face lies in the drawing.
enum class Outer { automatic, up, down, left, right };

// The profile walked so that its outer side is on the left of travel. Automatic means up for a curve that
// leads from one side to the other and is not all but wholly a hollow then. Throws Error (geometry), asking,
// where it is doubtful, also for a chord within five degrees of square to the way it would be walked, and
// where the ends meet.
Profile facing(const Profile& drawn, Outer outer);

}  // namespace lamwright
