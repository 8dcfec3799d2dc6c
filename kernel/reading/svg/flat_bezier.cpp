#include "kernel/reading/svg/flat_bezier.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright::svg_reading {
namespace {

// Roots within (0, 1) of the quadratic with Bernstein coefficients a, 2 b / 2, c, in order.
std::vector<double> roots(double a, double b, double c) {
  const double square = a - 2 * b + c, half = b - a;
  std::vector<double> out;
  const auto keep = [&](double over, double under) {
    const double t = over / under;
    if (t > 0 && t < 1) out.push_back(t);  // false for what is no number
  };
  const double under_root = half * half - square * a;
  if (under_root < 0) return out;
  // The sum without cancellation; the other root follows from the product.
  const double sum = -half - std::copysign(std::sqrt(under_root), half);
  keep(sum, square);
  keep(a, sum);
  std::sort(out.begin(), out.end());
  return out;
}

// The speed along the line of a curve of degree 2 or 3 is a quadratic at most.
std::vector<double> turning(const std::vector<double>& s) {
  if (s.size() == 3) return roots(s[1] - s[0], (s[2] - s[0]) / 2, s[2] - s[1]);
  return roots(s[1] - s[0], s[2] - s[1], s[3] - s[2]);
}

Vec2 farthest(const std::vector<Vec2>& poles) {
  return *std::max_element(poles.begin(), poles.end(), [&](const Vec2& a, const Vec2& b) {
    return (a - poles.front()).squaredNorm() < (b - poles.front()).squaredNorm();
  });
}

}  // namespace

std::optional<std::vector<Vec2>> straight_stops(const Bezier& curve) {
  const Vec2 from = curve.poles.front(), to = curve.poles.back();
  const Vec2 along = (farthest(curve.poles) - from).normalized();
  std::vector<double> stations;
  for (const Vec2& pole : curve.poles) {
    if (std::abs(cross(along, pole - from)) > kSamePoint) return std::nullopt;
    stations.push_back(along.dot(pole - from));
  }
  // Poles between the ends, in whatever order, cannot make a curve of degree 3 turn back.
  const double low = std::min(0.0, stations.back()) - kSamePoint;
  const double high = std::max(0.0, stations.back()) + kSamePoint;
  if (std::all_of(stations.begin(), stations.end(), [&](double s) { return s >= low && s <= high; }))
    return std::vector<Vec2>{to};
  if (!curve.weights.empty()) return std::nullopt;
  std::vector<Vec2> out;
  for (const double t : turning(stations)) out.push_back(curve.point(t));
  out.push_back(to);
  return out;
}

}  // namespace lamwright::svg_reading
