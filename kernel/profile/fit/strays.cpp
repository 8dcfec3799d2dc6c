#include <Eigen/Dense>
#include <array>
#include <cmath>

#include "kernel/profile/fit/clean.hpp"

namespace lamwright::fitting {
namespace {

constexpr std::size_t kNeighbours = 6;
constexpr double kStray = 4.5;  // standard deviations: one point in 150 000 by chance
constexpr std::size_t kOneIn = 20;

// Places of a point's neighbours `lag` apart, as even on both sides as the ends allow.
std::array<std::size_t, kNeighbours> neighbours(std::size_t i, std::size_t lag, std::size_t count) {
  const std::size_t before = std::min(i / lag, kNeighbours);
  const std::size_t behind = std::min((count - 1 - i) / lag, kNeighbours);
  std::size_t take = std::min(before, kNeighbours / 2);
  if (behind < kNeighbours / 2) take = std::min(before, kNeighbours - behind);
  std::array<std::size_t, kNeighbours> out{};
  for (std::size_t j = 0; j < kNeighbours; ++j)
    out[j] = j < take ? i - (take - j) * lag : i + (j - take + 1) * lag;
  return out;
}

// How a point lies to a parabola through its neighbours: distance, the neighbours' own standard deviation
// about it, and the factor by which that is less than the distance's.
struct Misfit {
  double distance = 0;
  double scatter = 0;
  double factor = 1;
};

// Neighbour `without` does not count (kNeighbours: all do).
Misfit misfit(const std::vector<Vec2>& points, std::size_t i,
              const std::array<std::size_t, kNeighbours>& near, std::size_t without) {
  const Vec2 along = (points[near.back()] - points[near.front()]).normalized();
  const double scale = (points[near.back()] - points[near.front()]).norm() / 2;
  Eigen::Matrix3d h = Eigen::Matrix3d::Zero();
  Eigen::Vector3d g = Eigen::Vector3d::Zero();
  double squares = 0;
  for (std::size_t j = 0; j < near.size(); ++j) {
    if (j == without) continue;
    const Vec2 d = points[near[j]] - points[i];
    const double u = d.dot(along) / scale, v = cross(along, d);
    const Eigen::Vector3d row{1, u, u * u};
    h += row * row.transpose();
    g += v * row;
    squares += v * v;
  }
  const Eigen::LDLT<Eigen::Matrix3d> solver(h);
  const Eigen::Vector3d x = solver.solve(g);
  const double freedom = (without < kNeighbours ? 5 : 6) - 3;
  return {std::abs(x[0]), std::sqrt(std::max(0.0, squares - g.dot(x)) / freedom),
          std::sqrt(1 + solver.solve(Eigen::Vector3d::UnitX())[0])};
}

// Where and how points are looked at.
struct View {
  std::size_t lag = 1;
  double sigma = 0;
  double curvature = 0;  // the greatest of the curve
};

// The wider gap to a next neighbour.
double gap_beside(const std::vector<Vec2>& points, std::size_t i, std::size_t lag) {
  const double before = i >= lag ? (points[i] - points[i - lag]).norm() : 0;
  return std::max(before, i + lag < points.size() ? (points[i + lag] - points[i]).norm() : 0);
}

// The greatest curvature of circles through points far apart; a stray bends them little.
double greatest_curvature(const std::vector<Vec2>& points, std::size_t lag) {
  const std::size_t reach = std::min<std::size_t>(kNeighbours * lag, (points.size() - 1) / 2);
  const double chord = (points.back() - points.front()).norm() / static_cast<double>(points.size());
  double out = 0;
  for (std::size_t i = reach; i + reach < points.size(); ++i) {
    const Vec2 a = points[i] - points[i - reach], b = points[i + reach] - points[i];
    if (std::min(a.norm(), b.norm()) < chord * static_cast<double>(reach) / 2) continue;
    out = std::max(out, 2 * std::abs(cross(a, b)) / (a.norm() * b.norm() * (a + b).norm()));
  }
  return out;
}

// More than noise, and than a joint of the curve within the gap, makes.
bool off(const Misfit& m, double gap, const View& view) {
  const double joint = 0.3 * view.curvature * gap * gap;
  return m.distance > m.factor * (kStray * view.sigma + joint) && m.scatter < 2.5 * view.sigma;
}

// Most points lie near the chord of their next neighbours, and no more has to be known of them.
bool near_chord(const std::vector<Vec2>& points, std::size_t i, std::size_t lag, double sigma) {
  if (i < lag || i + lag >= points.size()) return false;
  const Vec2 chord = points[i + lag] - points[i - lag];
  return std::abs(cross(chord, points[i] - points[i - lag])) < kStray / 2 * sigma * chord.norm();
}

// Off all neighbours, or off five of the six where the sixth is a stray itself.
bool stray(const std::vector<Vec2>& points, std::size_t i, const View& view) {
  if (near_chord(points, i, view.lag, view.sigma)) return false;
  const auto near = neighbours(i, view.lag, points.size());
  const double gap = gap_beside(points, i, view.lag);
  for (std::size_t without = 0; without <= kNeighbours; ++without)
    if (off(misfit(points, i, near, without), gap, view)) return true;
  return false;
}

}  // namespace

std::vector<std::size_t> strays(const std::vector<Vec2>& points, const Noise& noise, double least) {
  std::vector<std::size_t> out;
  const std::size_t count = points.size();
  if (count < kNeighbours * noise.lag + 2) return out;
  const View view{noise.lag, std::max(noise.sigma, least / kStray), greatest_curvature(points, noise.lag)};
  for (std::size_t i = 0; i < count; ++i)
    if (stray(points, i, view)) out.push_back(i);
  if (out.size() * kOneIn > std::max(count, kOneIn)) out.clear();
  return out;
}

}  // namespace lamwright::fitting
