#include "kernel/mechanics/sag.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright {

double EvenBeam::curvature(double x) const {
  const double at = std::abs(x), a = half_span, b = half_load;
  if (at >= a) return 0;
  const double moment = at < b ? load * (a * b - b * b / 2 - at * at / 2) : load * b * (a - at);
  return moment / stiffness;
}

double EvenBeam::slope(double x) const {
  const double at = std::abs(x), a = half_span, b = half_load, in = std::min(at, b);
  const double loaded = load * ((a * b - b * b / 2) * in - in * in * in / 6);
  const double past = at <= b ? 0 : load * b * ((a - b) * (at - b) - (at - b) * (at - b) / 2);
  return std::copysign((loaded + past) / stiffness, x);
}

double EvenBeam::sag(double x) const {
  const double at = std::abs(x), a = half_span, b = half_load, in = std::min(at, b);
  const double loaded = load * ((a * b - b * b / 2) * in * in / 2 - std::pow(in, 4) / 24);
  if (at <= b) return loaded / stiffness;
  const double slope = load * ((a * b - b * b / 2) * b - std::pow(b, 3) / 6);  // where the load ends
  const double past = at - b, arm = a - b;
  return (loaded + slope * past + load * b * (arm * past * past / 2 - std::pow(past, 3) / 6)) / stiffness;
}

double second_moment(double width, double depth) { return width * std::pow(depth, 3) / 12; }

}  // namespace lamwright
