#include "kernel/profile/fit/step.hpp"

#include <cmath>

#include "kernel/profile/sinc.hpp"

namespace lamwright::fitting {
namespace {

using Eigen::Matrix2d;
using Eigen::Matrix3d;
using Eigen::Vector2d;
using Eigen::Vector3d;
using Eigen::Vector4d;

// Share of the greatest possible weight that keeps unknowns without points (an empty run) where they are.
constexpr double kRidge = 1e-13;

// (w cos w - sin w) / w^2 and (w sin w - 1 + cos w) / w^2: how the end of a run moves with its curvature.
Vector2d bow(double w) {
  const double q = w * w;
  if (std::abs(w) < 0.05) return {w * (-1 / 3.0 + q * (1 / 30.0 - q / 840)), 0.5 - q * (1 / 8.0 - q / 144)};
  return {(w * std::cos(w) - std::sin(w)) / q, (w * std::sin(w) - 1 + std::cos(w)) / q};
}

Matrix2d inverse_of(Matrix2d m, bool first_fixed, bool second_fixed) {
  if (first_fixed || second_fixed) m(0, 1) = m(1, 0) = 0;
  const double determinant = m(0, 0) * m(1, 1) - m(0, 1) * m(1, 0);
  Matrix2d out;
  if (first_fixed || second_fixed)
    out << (first_fixed ? 0 : 1 / m(0, 0)), 0, 0, (second_fixed ? 0 : 1 / m(1, 1));
  else
    out << m(1, 1) / determinant, -m(0, 1) / determinant, -m(1, 0) / determinant, m(0, 0) / determinant;
  return out;
}

}  // namespace

Eigen::Matrix<double, 3, 5> carried_on(const Run& run) {
  const double w = run.turn(), length = run.length;
  const double c = std::cos(w), s = std::sin(w);  // the next frame is turned by -w
  const double half = w / 2, chord = length * sinc(half);
  const Vector2d end{chord * std::cos(half), -chord * std::sin(half)};
  const Vector2d bowed = length * length * Vector2d{bow(w)[0], -bow(w)[1]};
  const auto turned = [&](double x, double y) { return Vector2d{c * x - s * y, s * x + c * y}; };
  Eigen::Matrix<double, 3, 5> out;
  out << turned(1, 0), turned(0, 1), turned(-end.y(), end.x()), turned(bowed.x(), bowed.y()), Vector2d{1, 0},
      Eigen::RowVector<double, 5>::Zero();
  out.row(2) << 0, 0, 1, -length, -run.curvature;
  return out;
}

ChainSolver::ChainSolver(const Path& path, const Blocks& blocks, const Freedom& freedom, double damping)
    : damping_(damping), stages_(path.runs.size()) {
  const std::size_t n = path.runs.size();
  for (std::size_t i = n; i-- > 0;) {
    const bool straight = !freedom.straight.empty() && freedom.straight[i];
    stages_[i] = eliminated(blocks.runs[i], path.runs[i], straight, i + 1 == n, kRidge * (blocks.weight + 1));
  }
  Matrix2d start = value_.bottomRightCorner<2, 2>();
  start.diagonal() *= 1 + damping;
  start(0, 0) += kRidge * blocks.weight;
  start(1, 1) += kRidge * blocks.weight;
  start_inverse_ = inverse_of(start, !freedom.offset, !freedom.heading);
}

ChainSolver::Stage ChainSolver::eliminated(const RunBlock& block, const Run& run, bool straight, bool last,
                                           double ridge) {
  Stage stage;
  stage.carried = carried_on(run);
  Eigen::Matrix<double, 5, 5> m = stage.carried.transpose() * value_ * stage.carried;
  m.topLeftCorner<4, 4>() += block.h;
  const double length = run.length + 1;
  Matrix2d own = m.bottomRightCorner<2, 2>();
  own.diagonal() *= 1 + damping_;
  own(0, 0) += ridge * length * length * length * length;
  own(1, 1) += ridge;
  stage.inverse = inverse_of(own, straight, last);
  stage.mixed = m.topRightCorner<3, 2>();
  stage.gain = stage.inverse * stage.mixed.transpose();
  const Matrix3d left = m.topLeftCorner<3, 3>() - stage.mixed * stage.gain;
  value_ = (left + left.transpose()) / 2;
  return stage;
}

Step ChainSolver::solve(const std::vector<Vector4d>& g) const {
  const std::size_t n = stages_.size();
  std::vector<Vector2d> own(n);  // linear part of each run's two unknowns
  Vector3d linear = Vector3d::Zero();
  for (std::size_t i = n; i-- > 0;) {
    Eigen::Matrix<double, 5, 1> all = stages_[i].carried.transpose() * linear;
    all.head<4>() += g[i];
    own[i] = all.tail<2>();
    linear = all.head<3>() - stages_[i].gain.transpose() * own[i];
  }
  const Vector2d start = -start_inverse_ * linear.tail<2>();
  Step step{start[0], start[1], std::vector<double>(n), std::vector<double>(n)};
  Vector3d pose{0, start[0], start[1]};
  for (std::size_t i = 0; i < n; ++i) {
    const Vector2d u = -stages_[i].gain * pose - stages_[i].inverse * own[i];
    step.curvature[i] = u[0];
    step.length[i] = u[1];
    pose = stages_[i].carried.leftCols<3>() * pose + stages_[i].carried.rightCols<2>() * u;
  }
  return step;
}

Vector4d ChainSolver::at_last(const Step& step) const {
  Vector3d pose{0, step.offset, step.heading};
  for (std::size_t i = 0; i + 1 < stages_.size(); ++i)
    pose = stages_[i].carried.leftCols<3>() * pose +
           stages_[i].carried.rightCols<2>() * Vector2d{step.curvature[i], step.length[i]};
  return {pose[0], pose[1], pose[2], step.curvature.back()};
}

Spread ChainSolver::spread() const {
  Spread out;
  Matrix3d pose = Matrix3d::Zero();
  pose.bottomRightCorner<2, 2>() = start_inverse_;
  for (const Stage& stage : stages_) {
    const Matrix2d own = stage.gain * pose * stage.gain.transpose() + stage.inverse;
    out.curvature.push_back(own(0, 0));
    out.length.push_back(own(1, 1));
    // The last run ends abreast of the last point: it shortens as its start moves on.
    if (&stage == &stages_.back()) out.length.back() = pose(0, 0);
    const Matrix3d closed = stage.carried.leftCols<3>() - stage.carried.rightCols<2>() * stage.gain;
    pose = closed * pose * closed.transpose() +
           stage.carried.rightCols<2>() * stage.inverse * stage.carried.rightCols<2>().transpose();
  }
  return out;
}

}  // namespace lamwright::fitting
