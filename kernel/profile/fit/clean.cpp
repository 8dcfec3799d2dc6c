#include "kernel/profile/fit/clean.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/fit/samples.hpp"
#include "kernel/profile/profile.hpp"
#include "shared/error.hpp"

namespace lamwright::fitting {
namespace {

constexpr double kRepeated = 1e-3;  // mm; no measuring tool tells points that near from one
constexpr double kWideGap = 20;     // times the median step; measured curves are never as uneven
constexpr int kChordParts = 8;
constexpr double kTurnedBack = -0.5;  // cosine between one step and the next: 120 degrees

std::string point_name(std::size_t index) { return "point " + std::to_string(index + 1); }

// A step back of a pair of means, both steps beyond the noise.
bool turns_back(const Vec2& in, const Vec2& out, double least) {
  return in.norm() > least && out.norm() > least && in.dot(out) < kTurnedBack * in.norm() * out.norm();
}

// A stray lies off the way from its neighbour before to the one behind; a point that turns back beyond both.
bool beside_the_way(const Vec2& before, const Vec2& point, const Vec2& behind, double step) {
  const Vec2 way = behind - before;
  const double share = (point - before).dot(way) / std::max(way.squaredNorm(), 1e-300);
  return way.norm() > step / 2 && share > 0 && share < 1;
}

double median_step(const std::vector<Sample>& samples) {
  std::vector<double> steps;
  for (std::size_t i = 0; i + 1 < samples.size(); ++i)
    steps.push_back((samples[i + 1].at - samples[i].at).norm());
  return median(std::move(steps));
}

// Points that come round to where they began, as those of a whole circle.
void refuse_ring(const CleanPoints& points, double step) {
  constexpr std::size_t kRing = 8;  // fewer points may lie near one another by chance
  const double gap = (points.at.back() - points.at.front()).norm();
  double farthest = 0;
  for (const Vec2& p : points.at) farthest = std::max(farthest, (p - points.at.front()).norm());
  if (points.at.size() < kRing || gap > 1.5 * step || farthest < 2 * step) return;
  throw geometry_error("points", "come round to where they began; a panel has two ends",
                       "leave out the points that close the ring");
}

}  // namespace

CleanPoints cleaned(const std::vector<Vec2>& points) {
  CleanPoints out;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!points[i].allFinite())
      throw geometry_error(point_name(i), "has a coordinate that is not a number",
                           "correct it or leave it out");
    if (!out.at.empty() && (points[i] - out.at.back()).norm() <= kRepeated) {
      ++out.merged;
      continue;
    }
    out.at.push_back(points[i]);
    out.index.push_back(i);
  }
  if (out.at.size() < 2 && points.size() > 1)
    throw geometry_error(
        "points", "all " + std::to_string(points.size()) + " fall together at " + point_text(points.front()),
        "give points along the curve");
  return out;
}

std::vector<Vec2> with_chords(const std::vector<Vec2>& points) {
  if (points.size() < 4) return points;
  const double wide = kWideGap * median_step(singles(points));
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < points.size(); ++i) {
    out.push_back(points[i]);
    if (i + 1 == points.size() || (points[i + 1] - points[i]).norm() <= wide) continue;
    for (int part = 1; part < kChordParts; ++part)
      out.push_back(points[i] + (points[i + 1] - points[i]) * part / kChordParts);
  }
  return out;
}

void check_one_way(const CleanPoints& points, const Noise& noise, const std::vector<std::size_t>& strays) {
  const std::size_t size = noise.lag;
  const std::vector<Sample> steps = means(points.at, (points.at.size() + size - 1) / size);
  if (steps.size() < 3) return;
  const double least = 6 * noise.sigma / std::sqrt(static_cast<double>(size));
  const double step = median_step(steps);
  for (std::size_t i = 1; i + 1 < steps.size(); ++i) {
    const Vec2 before = steps[i - 1].at, at = steps[i].at, behind = steps[i + 1].at;
    if (!turns_back(at - before, behind - at, least)) continue;
    const bool stray = std::binary_search(strays.begin(), strays.end(), i * size);
    if (size == 1 && stray && beside_the_way(before, at, behind, step)) continue;
    throw geometry_error(point_name(points.index[i * size]),
                         "turns back at " + point_text(points.at[i * size]),
                         "give them in order along the curve, once");
  }
  refuse_ring(points, step);
}

}  // namespace lamwright::fitting
