// The linear problem in each round of a fit, solved run by run: time and memory grow with the count of runs.
#pragma once
#include <Eigen/Dense>
#include <vector>

#include "kernel/profile/fit/blocks.hpp"

namespace lamwright::fitting {

// What may change. The lengths of all runs but the last always may.
struct Freedom {
  bool offset = true;          // the start, square to the path
  bool heading = true;         // the start's heading
  std::vector<bool> straight;  // runs whose curvature stays 0; empty: none
};

// Change of the unknowns.
struct Step {
  double offset = 0;
  double heading = 0;
  std::vector<double> curvature, length;  // of each run; the last length is 0
};

// Variances for a unit variance of the residuals: the diagonal of the inverse normal matrix.
struct Spread {
  std::vector<double> curvature, length;  // of each run
};

// Least squares over a chain: a state (the pose where a run begins) that is carried from run to run, with two
// unknowns (curvature, length) a run. Eliminated from the last run to the first, then walked forward.
class ChainSolver {
 public:
  // damping >= 0 raises the diagonal by that share.
  ChainSolver(const Path& path, const Blocks& blocks, const Freedom& freedom, double damping);

  // Minimises the quadratic form whose linear parts are g (one a run).
  Step solve(const std::vector<Eigen::Vector4d>& g) const;
  // Change of the pose where the last run begins, and of its curvature, that a step brings.
  Eigen::Vector4d at_last(const Step& step) const;
  Spread spread() const;

 private:
  struct Stage {
    Eigen::Matrix<double, 3, 5> carried;  // next pose from (pose, curvature, length)
    Eigen::Matrix<double, 2, 3> gain;     // unknowns = -(gain * pose + inverse * linear)
    Eigen::Matrix2d inverse;
    Eigen::Matrix<double, 3, 2> mixed;
  };
  Stage eliminated(const RunBlock& block, const Run& run, bool straight, bool last, double ridge);

  double damping_;
  Eigen::Matrix3d value_ = Eigen::Matrix3d::Zero();  // of the runs from the current one on
  std::vector<Stage> stages_;
  Eigen::Matrix2d start_inverse_;
};

// d(next pose) / d(pose, curvature, length), each pose in its own frame (along, across, turned).
Eigen::Matrix<double, 3, 5> carried_on(const Run& run);

}  // namespace lamwright::fitting
