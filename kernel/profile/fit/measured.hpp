// What is known of measured points before they are fitted.
#pragma once
#include "kernel/profile/fit/clean.hpp"
#include "kernel/profile/fit/fit.hpp"

namespace lamwright::fitting {

struct Measured {
  CleanPoints points;
  Noise noise;
  bool told = false;  // the noise is given, or estimated from points enough
  double tolerance = 0;
  std::vector<std::size_t> strays;  // positions in the clean points that may be left out
};

// Throws Error (geometry) for a spec or points that cannot be fitted.
Measured measured(const FitSpec& spec);

// The tolerance of the spec where noise of this standard deviation likely keeps it, else what it nearly
// surely keeps within.
double kept_tolerance(const FitSpec& spec, const Measured& measured, double sigma);

// Distance beyond which a stray is left out of the fit.
double stray_limit(const Measured& measured);

// The points but for some positions, which rise.
std::vector<Vec2> without(const std::vector<Vec2>& points, const std::vector<std::size_t>& left_out);

}  // namespace lamwright::fitting
