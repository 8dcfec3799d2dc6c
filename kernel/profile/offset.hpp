// Exact operations on profiles that keep lines lines and arcs arcs.
#pragma once
#include "kernel/profile/profile.hpp"

namespace lamwright {

// The parallel at distance d (mm) to the outer side (negative: to the inner side). length' = length (1 + k
// d), curvature' = k / (1 + k d). `what` names the result in the message ("lower contact edge"). Throws Error
// (geometry) where 1 + k d <= 0: names the bend, its radius, and the largest distance that fits.
Profile offset(const Profile& profile, double d, const std::string& what = "parallel");

// The station on offset(profile, d) that lies on the normal at station s of the profile.
double offset_station(const Profile& profile, double s, double d);

// The profile that springs back to this one when the share r of its curvature is lost: curvature / (1 - r) at
// unchanged length. r < 1; negative where a piece closes further. The start pose is kept.
Profile compensated(const Profile& profile, double r);

// Carried on, tangent and straight, by `left` and `right` (>= 0) past its ends.
Profile extended(const Profile& profile, double left, double right);

// What lies between two stations, 0 <= from < to <= girth, where it is.
Profile between(const Profile& profile, double from, double to);

// Moved so that its chord (the line between its ends) is level, left to right, with its middle at the origin.
// Throws Error (geometry) when the ends meet.
Profile levelled(const Profile& profile);

// Straight distance between the ends.
double chord(const Profile& profile);

// Throws Error (geometry) when the curve meets itself, with the two stations and the point. `what` names it.
void refuse_crossing(const Profile& profile, const std::string& what);

}  // namespace lamwright
