// What tests of fits ask in few words.
#pragma once
#include "kernel/profile/fit/fit.hpp"
#include "tests/support/random_runs.hpp"

namespace lamwright::test {

inline FitSpec through(std::vector<Vec2> points, double tolerance = 0.5) {
  FitSpec spec;
  spec.points = std::move(points);
  spec.tolerance = tolerance;
  return spec;
}

// One arc, or `count` of them.
inline FitSpec arcs_through(std::vector<Vec2> points, std::size_t count = 0, double tolerance = 0.5) {
  FitSpec spec = through(std::move(points), tolerance);
  spec.kind = count == 0 ? FitKind::arc : FitKind::arcs;
  spec.arcs = count == 0 ? 1 : count;
  return spec;
}

// As many runs, each of the same kind.
inline bool same_kinds(const Profile& a, const Profile& b) {
  if (a.runs().size() != b.runs().size()) return false;
  for (std::size_t i = 0; i < a.runs().size(); ++i)
    if (a.runs()[i].straight() != b.runs()[i].straight()) return false;
  return true;
}

// Greatest share by which a radius of two profiles of the same kinds differs; a change of sense counts as 2.
inline double radius_error(const Profile& found, const Profile& truth) {
  double worst = 0;
  for (std::size_t i = 0; i < truth.runs().size(); ++i)
    if (!truth.runs()[i].straight())
      worst = std::max(worst, std::abs(truth.runs()[i].curvature / found.runs()[i].curvature - 1));
  return worst;
}

// The same, of the lengths.
inline double length_error(const Profile& found, const Profile& truth) {
  double worst = 0;
  for (std::size_t i = 0; i < truth.runs().size(); ++i)
    worst = std::max(worst, std::abs(found.runs()[i].length / truth.runs()[i].length - 1));
  return worst;
}

// Two bends of either sense between lines, clear of one another at noise of 0.2: 1038 long.
inline Profile swan() {
  return {{{-420, 35}, 0.45}, {straight(160), bend(45, 400), straight(120), bend(-40, 500), straight(95)}};
}

inline std::vector<Vec2> noisy(const Profile& profile, std::uint64_t seed) {
  Dice dice(seed);
  return sampled(profile, kRunStep, kRunNoise, dice);
}

inline std::string text_of(const Profile& profile) {
  std::string out;
  for (const Run& run : profile.runs()) out += run_text(run) + "; ";
  return out;
}

}  // namespace lamwright::test
