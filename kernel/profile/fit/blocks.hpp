// Residuals of samples against a path and their derivatives, summed up run by run.
#pragma once
#include <Eigen/Dense>
#include <vector>

#include "kernel/profile/fit/path.hpp"

namespace lamwright::fitting {

// A point's signed distance to a run and how it changes with the run's start pose, moved along its tangent,
// along its normal and turned (anticlockwise), and with the run's curvature: in this order everywhere.
struct Distance {
  double value;
  Eigen::Vector4d slope;
};
Distance distance_and_slope(const Seen& point, double curvature);

// Of the samples abreast of one run, to first order about the path: the sum of weight (distance + slope .
// x)^2 is x . h x + 2 g . x + squares.
struct RunBlock {
  Eigen::Matrix4d h = Eigen::Matrix4d::Zero();
  Eigen::Vector4d g = Eigen::Vector4d::Zero();
  double squares = 0;
  double weight = 0;
};

struct Blocks {
  std::vector<RunBlock> runs;
  double squares = 0;
  double greatest = 0;  // greatest size of a distance
  double weight = 0;
};

Blocks blocks_of(const Path& path, const std::vector<Sample>& samples);

}  // namespace lamwright::fitting
