// From the fitted path to what the user gets.
#pragma once
#include "kernel/profile/fit/measured.hpp"
#include "kernel/profile/fit/refine.hpp"

namespace lamwright::fitting {

struct Fitted {
  Refined fit;
  std::vector<bool> straight;
  std::vector<std::size_t> left_out;  // positions in the clean points
};

// noise: as given, or as the fit tells.
FitResult outcome(const FitSpec& spec, const Measured& measured, const Fitted& fitted, double noise);

}  // namespace lamwright::fitting
