// How far measured points scatter about the curve they are on.
#pragma once
#include <cstddef>
#include <vector>

#include "kernel/profile/vector.hpp"

namespace lamwright::fitting {

double median(std::vector<double> values);  // at least one

struct Noise {
  double sigma = 0;     // standard deviation square to the curve, mm
  std::size_t lag = 1;  // points so far apart, by index, are clearly apart along the curve
};

// From third divided differences over four points each `lag` apart, to which runs of constant curvature add
// nothing and joints little; the median of their sizes, so that outliers do not tell. What grows with the lag
// is shape, not noise, and is taken off. Points in order, at least 4; fewer have no noise.
Noise noise_of(const std::vector<Vec2>& points);

// The size that the greatest of `count` standard normal numbers keeps within with the given probability.
double greatest_of(std::size_t count, double probability);

}  // namespace lamwright::fitting
