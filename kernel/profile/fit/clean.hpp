// Measured points made fit for fitting: finite, each apart from the one before, going one way.
#pragma once
#include "kernel/profile/fit/noise.hpp"

namespace lamwright::fitting {

struct CleanPoints {
  std::vector<Vec2> at;
  std::vector<std::size_t> index;  // of each, in the list it came from
  std::size_t merged = 0;          // left out since they repeat the one before within 0.001
};

// Throws Error (geometry) for a point that is not finite and when all points are one.
CleanPoints cleaned(const std::vector<Vec2>& points);

// Points that lie off the smooth neighbourhood of their neighbours by more than `off` (mm) and 4.5 standard
// deviations, as positions in `points`; empty when they are more than one in twenty, which is no matter of
// single points.
std::vector<std::size_t> strays(const std::vector<Vec2>& points, const Noise& noise, double off);

// The points with some more along the chords of gaps that are far wider than the others: where somebody gives
// the ends of a straight stretch alone, no arc may bow out between them.
std::vector<Vec2> with_chords(const std::vector<Vec2>& points);

// Throws Error (geometry) where the points turn back on their way; single strays do not count.
void check_one_way(const CleanPoints& points, const Noise& noise, const std::vector<std::size_t>& strays);

}  // namespace lamwright::fitting
