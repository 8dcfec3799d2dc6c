// Readings with a fit, made by hand: points set beside a profile at known distances.
#pragma once
#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "kernel/job/profile_reading.hpp"

namespace lamwright::test {

struct FittedSpec {
  std::size_t points = 41;  // evenly along the girth, both ends among them
  double wave = 0.2;        // amplitude of their distances, mm
  double tolerance = 0.5;
  std::vector<std::pair<std::size_t, double>> suspects{};  // index and distance
};

// Distances run through a wave that no symmetry of the profile repeats.
inline double wave_at(const FittedSpec& spec, std::size_t i) {
  for (const auto& [index, distance] : spec.suspects)
    if (index == i) return distance;
  return spec.wave * std::sin(1.7 * double(i) + 0.3);
}

inline ProfileReading fitted(const Profile& profile, const FittedSpec& spec) {
  FitResult fit{profile, {}, {}, 0, 0, 0, spec.tolerance, 0, {}, {}};
  std::vector<Vec2> points;
  double squares = 0;
  for (std::size_t i = 0; i < spec.points; ++i) {
    const Pose pose = profile.at(profile.girth() * double(i) / double(spec.points - 1));
    fit.residuals.push_back(wave_at(spec, i));
    points.push_back(pose.point + fit.residuals.back() * pose.normal());
    fit.greatest = std::max(fit.greatest, std::abs(fit.residuals.back()));
    squares += fit.residuals.back() * fit.residuals.back();
  }
  fit.rms = std::sqrt(squares / double(spec.points));
  fit.noise = spec.wave / std::sqrt(2);
  for (const auto& [index, distance] : spec.suspects) fit.suspects.push_back(index);
  for (const Run& run : profile.runs())
    fit.accuracy.push_back({0.31, run.straight() ? INFINITY : 0.02 / std::abs(run.curvature)});
  return {profile, std::move(points), std::move(fit), {}, {}};
}

}  // namespace lamwright::test
