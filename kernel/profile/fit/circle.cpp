#include "kernel/profile/fit/circle.hpp"

#include <Eigen/Dense>
#include <cmath>

namespace lamwright {
namespace {

constexpr int kRounds = 200;
constexpr double kConverged = 1e-14;  // step over radius
constexpr double kLine = 1e-10;       // extent over radius at which an arc is a line to rounding

Eigen::Matrix2Xd matrix_of(const std::vector<Vec2>& points) {
  Eigen::Matrix2Xd out(2, points.size());
  for (std::size_t i = 0; i < points.size(); ++i) out.col(static_cast<Eigen::Index>(i)) = points[i];
  return out;
}

double squares(const Eigen::Matrix2Xd& points, const Circle& circle) {
  return ((points.colwise() - circle.centre).colwise().norm().array() - circle.radius).square().sum();
}

Circle stepped(const Eigen::Matrix2Xd& points, const Circle& circle) {
  const Eigen::Matrix2Xd d = points.colwise() - circle.centre;
  const Eigen::RowVectorXd away = d.colwise().norm();
  Eigen::MatrixX3d j(points.cols(), 3);
  j.leftCols<2>() = -(d.array().rowwise() / away.array().max(1e-300)).matrix().transpose();
  j.col(2).setConstant(-1);
  const Eigen::VectorXd residual = (away.array() - circle.radius).matrix().transpose();
  const Eigen::Vector3d step = -j.colPivHouseholderQr().solve(residual);
  return {circle.centre + step.head<2>(), circle.radius + step[2]};
}

}  // namespace

std::optional<Circle> algebraic_circle(const std::vector<Vec2>& given) {
  if (given.size() < 3) return {};
  const Eigen::Matrix2Xd points = matrix_of(given);
  const Vec2 mean = points.rowwise().mean();
  const Eigen::Matrix2Xd p = points.colwise() - mean;
  const Eigen::VectorXd z = p.colwise().squaredNorm().transpose();
  const double spread = z.mean(), scale = 2 * std::sqrt(spread);
  if (!(spread > 0)) return {};
  Eigen::MatrixX3d rows(points.cols(), 3);
  rows << (z.array() - spread).matrix() / scale, p.transpose();
  // The right singular vectors are those of the triangle.
  const Eigen::Matrix3d triangle =
      Eigen::HouseholderQR<Eigen::MatrixX3d>(rows).matrixQR().topRows<3>().triangularView<Eigen::Upper>();
  const Eigen::Vector3d u = Eigen::JacobiSVD<Eigen::Matrix3d>(triangle, Eigen::ComputeFullV).matrixV().col(2);
  const double a = u[0] / scale;
  if (std::abs(a) * scale < kLine) return {};
  const Vec2 centre = -u.tail<2>() / (2 * a);
  return Circle{mean + centre, std::sqrt(centre.squaredNorm() + spread)};
}

std::optional<Circle> geometric_circle(const std::vector<Vec2>& given) {
  std::optional<Circle> circle = algebraic_circle(given);
  if (!circle) return {};
  const Eigen::Matrix2Xd points = matrix_of(given);
  double least = squares(points, *circle);
  for (int round = 0; round < kRounds; ++round) {
    const Circle next = stepped(points, *circle);
    const double now = squares(points, next);
    if (!(now <= least)) break;
    const double step = (next.centre - circle->centre).norm();
    circle = next;
    least = now;
    if (step <= kConverged * circle->radius) break;
  }
  return circle;
}

}  // namespace lamwright
