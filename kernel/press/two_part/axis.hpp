// The pull axis of a two-part press: which way it lies, and whether the upper half comes off along it.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::two_part {

// Angle of the job's pull axis from the chord's normal, radians, positive: its upper end leans right.
double pull_axis(const PullSpec& pull, const Panel& panel);
std::string pull_name(const PullSpec& pull);

// Throws Error (geometry) for an undercut: a normal more than a right angle from the axis. Names the runs,
// angles and places, and the axis that would clear them if there is one.
void refuse_undercut(const Panel& panel, double axis, double draft);

// The axis, its runs, and how it compares with others. `neutral` is the neutral line in the frame of the
// press.
Pull pull_of(const Job& job, const Panel& panel, const Profile& neutral);

// A normal nearer than this to a right angle from the axis counts as one: rounding of summed headings.
inline constexpr double kRightAngle = 1e-9;

}  // namespace lamwright::two_part
