// The pull axis of a two-part press: which way it lies, and whether the upper half comes off along it.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::two_part {

// Angle of the job's pull axis from the chord's normal, radians, positive: its upper end leans right.
double pull_axis(const PullSpec& pull, const Panel& panel);
std::string pull_name(const PullSpec& pull);

// Axes along which the upper half comes off with that draft.
std::optional<Headings> axes_coming_off(const Panel& panel, double draft);

// An axis in degrees with as few places, at least `places`, as keep it in a range; nothing when seven do not.
std::optional<double> short_degrees(double axis, const Headings& range, int places);

// The most even pull in a range of axes, as a job would name it: rounded, its figures those of the rounded
// pull.
std::optional<PullChoice> best_named(const Profile& line, const Headings& range);

// The axis, its runs, and how it compares with others. `neutral` is the neutral line in the frame of the
// press.
Pull pull_of(const Job& job, const Panel& panel, const Profile& neutral);

// A normal nearer than this to a right angle from the axis counts as one: rounding of summed headings.
inline constexpr double kRightAngle = 1e-9;

}  // namespace lamwright::two_part
