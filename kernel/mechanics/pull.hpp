// Normals of a curve against the axis along which a two-part mould is pulled shut.
#pragma once
#include <optional>
#include <vector>

#include "kernel/profile/profile.hpp"

namespace lamwright {

// One run of a line posed with the pull axis vertical. Angles of its normal from the axis, radians,
// signed: positive when the normal leans left (anticlockwise).
struct RunPull {
  double at_start = 0;  // radians, not wrapped to one turn
  double at_end = 0;    // between them the angle changes evenly

  double greatest() const;        // size alone
  double least() const;           // 0 when the axis lies between
  double least_share() const;     // of the pressure: cos of the angle, never below 0
  double greatest_share() const;  // where the run is nearest to square to the axis
};
std::vector<RunPull> run_pulls(const Profile& posed);  // in the order of its runs

// The least and greatest heading along a line; its normals lie between those, a quarter turn on.
struct Headings {
  double least = 0;     // radians
  double greatest = 0;  // radians
};
Headings headings(const Profile& line);  // at joints and ends, where the extremes are

// The greatest angle of a normal of the line from an axis at `axis` from the chord's normal.
double greatest_angle(const Profile& line, double axis);

// Angle from the chord's normal to the middle between the extreme normals, positive when its upper end leans
// right. The line's chord is level.
double bisector(const Profile& level);

// Axes (from the chord's normal) to which every normal of the line keeps `most` radians or less; nothing
// when its normals turn through more than twice that. The line's chord is level.
std::optional<Headings> clearing_axes(const Profile& level, double most);

// The line about the middle of its chord turned so that an axis at `axis` from the chord's normal is
// vertical; that middle at the origin.
Profile pull_upright(const Profile& line, double axis);

}  // namespace lamwright
