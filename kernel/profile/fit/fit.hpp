// Runs through measured points: the fewest tangent lines and arcs that stay within a tolerance of all points.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/profile/profile.hpp"

namespace lamwright {

// What a profile through points is made of.
enum class FitKind {
  runs,  // the fewest runs, lines kept lines
  arc,   // one arc, the geometric circle fit
  arcs,  // a given number of arcs, tangent to one another
};

// An end that is known: the profile passes through the point, and where a heading is given (radians) leaves
// or arrives in it.
struct KnownEnd {
  Vec2 point{0, 0};               // mm, in the frame of the points
  std::optional<double> heading;  // radians, in the direction of travel
};

// Points and what is asked of the profile through them.
struct FitSpec {
  std::vector<Vec2> points;      // in order of travel, mm
  double tolerance = 0.5;        // greatest distance of a point from the profile, mm
  FitKind kind = FitKind::runs;  // decides how many runs there are
  std::size_t arcs = 1;          // for FitKind::arcs
  std::optional<double> noise;   // standard deviation of a point square to the curve, mm; none: estimated
  // Where it has to begin and end: within ten tolerances, or two gaps between points, of the points there.
  std::optional<KnownEnd> start,
      end;  // none: the profile begins and ends abreast of the first and last point
};

// How well a run is known, from the points alone: standard deviations. Radius infinite for a straight run,
// both where no point is to spare.
struct RunAccuracy {
  double length = 0;  // mm
  double radius = 0;  // mm
};

// The profile with what the points say about it.
struct FitResult {
  Profile profile;                    // in the frame of the points, walked in their order
  std::vector<RunAccuracy> accuracy;  // of each run of the profile
  std::vector<double> residuals;      // of each point given, mm, positive on the left of travel
  double greatest = 0;                // greatest size of a residual
  double rms = 0;                     // root of the mean square of all residuals
  double noise = 0;                   // as given, or as estimated
  double tolerance = 0;               // kept: that of the spec, or more where the noise forbids it
  std::size_t merged = 0;             // points left out since they repeat the one before within 0.001
  std::vector<std::size_t> suspects;  // points, by index, that look wrong
  std::vector<std::string> notes;     // sentences for the user
};

// The count of runs n is the least for which the least-squares profile has no point beyond the tolerance; a
// run is straight when that raises the sum of squares by less than 9 noise^2 and keeps the tolerance. Where
// the gap between two points is more than 20 times the median gap, the chord between them counts as measured.
//
// Noise: estimated from neighbours, and from the residuals of the fit where these hold nothing else. From 20
// points on, or when it is given, a tolerance that noise alone would break is widened to what it keeps within
// (the greatest of as many normal numbers, with 99.9 percent); where a
// point then lies beyond the one asked for, or that is below three times the noise, a note says so. A
// tolerance below 1.5 times the noise is refused, but not for FitKind::arc. With a noise given as 0
// deviations are shape: n is then the least for which some profile of n runs keeps the tolerance, and where
// least squares do not, the points are weighted to level the greatest distances.
//
// Single points further off than 4.5 times the noise and half the tolerance that do not lie in a row with
// their neighbours are suspects, at most one in twenty; so are points, up to one in ten, alone or two in a
// row, that cost two runs each. They are left out of the fit and named in the notes, but count in residuals,
// greatest and rms.
//
// Errors (geometry) name the point and the way out: a coordinate that is no number; points that all fall
// together, that turn back on their way, or are too few (two for a line, three for an arc, 2 n + 1 for n
// arcs); points on one line for FitKind::arc; no profile within the tolerance. Up to 1e6 points and some
// hundred runs; time grows in proportion to the points. Deterministic.
FitResult fit(const FitSpec& spec);

// The least-squares profile through points with as many runs as a given one, from which the search begins;
// its straight runs stay straight. At least as many points as three a run. None when a run would vanish.
std::optional<Profile> settled(const Profile& profile, const std::vector<Vec2>& points,
                               const std::optional<KnownEnd>& start, const std::optional<KnownEnd>& end);

}  // namespace lamwright
