// Every tolerance of the program and where it comes from. Lengths in mm, angles in radians.
#pragma once

namespace lamwright {

// Two stations, points or lengths nearer than this are one. Far above rounding (1e-12 of a 10 m panel is
// 1e-8) and far below what a saw can follow.
inline constexpr double kSamePoint = 1e-6;

// Curvatures that differ by less are equal, so neighbouring runs merge (1/mm; 1e-12 bows 10 m by 1e-5 mm).
inline constexpr double kSameCurvature = 1e-12;

// A joint that turns by more is a kink: one arc second-like step no fair curve has.
inline constexpr double kTangent = 1e-6;

// A rule that says "at least 60" is met by 60 less this (a length summed from rounded inputs).
inline constexpr double kAtLeast = 1e-6;

// A count that is a whole number but for rounding is that number.
inline constexpr double kWholeNumber = 1e-9;

// Modelling tolerance of the solids.
inline constexpr double kSolid = 1e-7;

}  // namespace lamwright
