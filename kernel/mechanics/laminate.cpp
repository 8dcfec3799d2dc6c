#include "kernel/mechanics/laminate.hpp"

#include <Eigen/Dense>
#include <cmath>

#include "shared/error.hpp"

namespace lamwright {
namespace {

using Eigen::Matrix3d;

// Stiffness of one layer under plane stress in its own axes.
Matrix3d reduced(const Orthotropic& m) {
  ensure(m.along > 0 && m.across > 0 && m.shear > 0, "a layer has stiffness");
  const double other = m.poisson * m.across / m.along, scale = 1 - m.poisson * other;
  ensure(scale > 0, "Poisson's ratios of a layer leave it stiff");
  Matrix3d q = Matrix3d::Zero();
  q(0, 0) = m.along / scale;
  q(1, 1) = m.across / scale;
  q(0, 1) = q(1, 0) = m.poisson * m.across / scale;
  q(2, 2) = m.shear;
  return q;
}

// The same turned to the plate's axes; shear strain is the engineering one.
Matrix3d turned(const Matrix3d& q, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  Matrix3d strain;  // of the plate to that of the layer
  strain << c * c, s * s, c * s, s * s, c * c, -c * s, -2 * c * s, 2 * c * s, c * c - s * s;
  return strain.transpose() * q * strain;
}

}  // namespace

Laminate laminate(const std::vector<PlateLayer>& layers, double about) {
  ensure(!layers.empty(), "a laminate has layers");
  Laminate out{Matrix3d::Zero(), Matrix3d::Zero(), Matrix3d::Zero()};
  for (const PlateLayer& layer : layers) {
    ensure(layer.to > layer.from, "a layer has a thickness");
    const Matrix3d q = turned(reduced(layer.material), layer.angle);
    const double low = layer.from - about, high = layer.to - about;
    out.A += q * (high - low);
    out.B += q * (high * high - low * low) / 2;
    out.D += q * (high * high * high - low * low * low) / 3;
  }
  return out;
}

Axes free_bending(const Laminate& laminate) {
  // Without membrane forces the membrane follows: D - B A^-1 B.
  const Matrix3d follows = laminate.D - laminate.B * laminate.A.inverse() * laminate.B;
  const Matrix3d gives = follows.inverse();
  return {1 / gives(0, 0), 1 / gives(1, 1)};
}

double modulus_at_angle(double along, double across, double angle) {
  const double s = std::sin(angle) * std::sin(angle), c = std::cos(angle) * std::cos(angle);
  return along * across / (along * s + across * c);
}

}  // namespace lamwright
