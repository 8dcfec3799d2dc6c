// Sums over stretches of samples, from which arcs are fitted to any stretch in constant time.
#pragma once
#include <Eigen/Dense>
#include <vector>

#include "kernel/profile/fit/path.hpp"

namespace lamwright::fitting {

// A frame near the curve. In it a run of the curve through (u, v) obeys a + b u + c w - v = 0 with
// w = (u^2 + v^2) / 2, and the left side is the distance to it, to first order in a and b.
struct Frame {
  Vec2 at{0, 0};
  Vec2 along{1, 0};

  Vec2 across() const { return left_of(along); }
};

// The sum of weight (a + b u + c w - v)^2 as x . h x - 2 g . x + squares with x = (a, b, c).
struct Stretch3 {
  Eigen::Matrix3d h;
  Eigen::Vector3d g;
  double squares = 0;

  Eigen::Vector3d best() const;  // the arc of least squares
  double least() const;          // its sum of squares, not below 0
};

class Moments {
 public:
  explicit Moments(const std::vector<Sample>& samples);

  double weight(std::size_t from, std::size_t to) const { return weights_[to] - weights_[from]; }
  // Samples from `from` up to, not including, `to`.
  Stretch3 stretch(std::size_t from, std::size_t to, const Frame& frame) const;

 private:
  // Samples about one origin; far from it the sums would lose digits.
  struct Chunk {
    std::size_t first;
    Vec2 origin;
    std::vector<Eigen::Matrix4d> sums;  // of products of (1, x, y, x^2 + y^2) of the samples before each
  };
  std::vector<Chunk> chunks_;
  std::vector<double> weights_;  // of the samples before each
};

}  // namespace lamwright::fitting
