// Random profiles whose runs a fit can tell apart, and noisy samples of profiles. The same on every machine:
// the distributions of the standard library are not.
#pragma once
#include <cstdint>
#include <random>

#include "tests/support/plain_fit.hpp"
#include "tests/support/profiles.hpp"

namespace lamwright::test {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) { return low + (high - low) * double(engine_() >> 11) * 0x1p-53; }
  bool chance(double share) { return between(0, 1) < share; }
  int whole(int low, int high) { return low + int(between(0, 1) * (high - low + 1)); }
  // Normal with mean 0 and standard deviation 1, by Box and Muller.
  double normal() {
    const double size = std::sqrt(-2 * std::log(1 - between(0, 1)));
    return size * std::cos(2 * kPi * between(0, 1));
  }

 private:
  std::mt19937_64 engine_;
};

// Points along a profile at equal steps from its start; the last one is the last that fits.
inline std::vector<Vec2> sampled(const Profile& profile, double step) {
  std::vector<Vec2> out;
  for (int i = 0; i * step <= profile.girth() + 1e-9; ++i) out.push_back(profile.point(i * step));
  return out;
}

// The same, each off square to the curve by a normal error.
inline std::vector<Vec2> sampled(const Profile& profile, double step, double noise, Dice& dice) {
  std::vector<Vec2> out = sampled(profile, step);
  for (std::size_t i = 0; i < out.size(); ++i)
    out[i] += noise * dice.normal() * profile.at(double(i) * step).normal();
  return out;
}

// Of random profiles.
inline constexpr double kRunNoise = 0.2, kRunStep = 10;

// A line of 80 to 400, or a bend of 20 to 70 degrees either way with a radius of 250 to 900. Headings stay
// within 75 degrees of the first, so that the curve never meets itself.
inline std::vector<Run> random_runs(int count, Dice& dice) {
  std::vector<Run> runs;
  double heading_deg = 0;
  while (int(runs.size()) < count) {
    const bool after_line = !runs.empty() && runs.back().straight();
    if (!after_line && dice.chance(0.4)) {
      runs.push_back(straight(dice.between(80, 400)));
      continue;
    }
    double turn = dice.between(20, 70) * (dice.chance(0.6) ? 1 : -1);
    if (std::abs(heading_deg - turn) > 75) turn = -turn;
    if (std::abs(heading_deg - turn) > 75) continue;
    heading_deg -= turn;
    runs.push_back(bend(turn, dice.between(250, 900)));
  }
  return runs;
}

// Two bends of one sense beside one another have radii that differ by half or more.
inline bool alike(const Run& a, const Run& b) {
  if (a.curvature * b.curvature <= 0) return false;
  return std::max(a.curvature / b.curvature, b.curvature / a.curvature) < 1.5;
}

// What noise of 0.2 lets any fit tell. Radii: their bound is at most 1.4 percent, so that 5 percent are 3.5
// standard deviations. Number of runs: with one run fewer some sample lies 1.6 off, which is a tolerance of 1
// and three times the noise.
inline bool clear(const Profile& profile) {
  const std::vector<Run>& runs = profile.runs();
  for (std::size_t i = 0; i + 1 < runs.size(); ++i)
    if (alike(runs[i], runs[i + 1])) return false;
  const std::vector<Vec2> samples = sampled(profile, kRunStep);
  const std::vector<double> bounds = radius_bounds(profile, samples, kRunNoise);
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (bounds[i] * std::abs(runs[i].curvature) > 0.014) return false;
  return departure_with_one_less(profile, sampled(profile, 3 * kRunStep)) > 1.6;
}

// Of 1 to 9 runs, from a pose near the origin in any direction.
inline Profile random_clear_profile(Dice& dice) {
  const int count = dice.whole(1, 9);
  for (;;) {
    const Pose start{{dice.between(-500, 500), dice.between(-500, 500)}, dice.between(-kPi, kPi)};
    const Profile drawn(start, random_runs(count, dice));
    if (clear(drawn)) return drawn;
  }
}

}  // namespace lamwright::test
