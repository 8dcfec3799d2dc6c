#include "exporters/gltf/placing.hpp"

#include <Eigen/Geometry>
#include <cmath>

#include "shared/number.hpp"

namespace lamwright::gltf {
namespace {

double linear(double share) {
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

}  // namespace

Json matrix(const Frame& frame) {
  Json out = Json::array();
  for (const Vec3& column : {frame.x, frame.y, frame.z(), frame.origin}) {
    for (int row = 0; row < 3; ++row) out.push_back(json_number(column[row]));
    out.push_back(out.size() == 15 ? 1 : 0);
  }
  return out;
}

Json rotation(const Frame& frame) {
  Eigen::Matrix3d axes;
  axes << frame.x, frame.y, frame.z();
  Eigen::Quaterniond turn(axes);
  if (turn.w() < 0) turn.coeffs() = -turn.coeffs();
  Json out = Json::array();
  for (const double part : {turn.x(), turn.y(), turn.z(), turn.w()}) out.push_back(json_number(part));
  return out;
}

Json linear_colour(const std::string& colour) {
  Json out = Json::array();
  for (const std::size_t at : {1, 3, 5})
    out.push_back(rounded(linear(std::stoi(colour.substr(at, 2), nullptr, 16) / 255.0), 6));
  out.push_back(1);
  return out;
}

}  // namespace lamwright::gltf
