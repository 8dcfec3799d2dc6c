#include "kernel/profile/fit/noise.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace lamwright::fitting {

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

namespace {

constexpr double kMedianOfNormal = 0.6744897501960817;  // of the size of a standard normal number
constexpr double kClearlyApart = 8;                     // spacing over noise at which order is beyond doubt
constexpr std::size_t kWindows = 4000;                  // enough for one in a hundred
constexpr double kTrim = 3;          // standard deviations beyond which a value is no noise
constexpr double kTrimmed = 0.9866;  // standard deviation of a normal number kept within that

// Third divided difference across the chord of four points, for a unit sum of squared weights; none where the
// points do not follow one another along it.
std::optional<double> contrast(const std::vector<Vec2>& points, std::size_t i, std::size_t lag) {
  const Vec2 from = points[i], chord = points[i + 3 * lag] - from;
  const double length = chord.norm();
  if (length == 0) return {};
  double u[4], sum = 0, squares = 0;
  for (std::size_t j = 0; j < 4; ++j) {
    u[j] = (points[i + j * lag] - from).dot(chord) / length;
    if (j > 0 && u[j] - u[j - 1] < 0.02 * length) return {};
  }
  for (int j = 0; j < 4; ++j) {
    double weight = length * length * length;
    for (int m = 0; m < 4; ++m)
      if (m != j) weight /= u[j] - u[m];
    sum += weight * cross(chord, points[i + j * lag] - from) / length;
    squares += weight * weight;
  }
  return sum / std::sqrt(squares);
}

// Standard deviation of normal values among which a few are larger: the median tells which those are.
double robust_deviation(const std::vector<double>& sizes) {
  double sigma = median(sizes) / kMedianOfNormal;
  for (int round = 0; round < 5; ++round) {
    double squares = 0, count = 0;
    for (const double size : sizes) {
      if (size > kTrim * sigma) continue;
      squares += size * size;
      ++count;
    }
    if (count > 0) sigma = std::sqrt(squares / count) / kTrimmed;
  }
  return sigma;
}

// None when too few windows are in order.
std::optional<double> sigma_at(const std::vector<Vec2>& points, std::size_t lag) {
  if (points.size() < 3 * lag + 1) return {};
  const std::size_t windows = points.size() - 3 * lag, stride = 1 + windows / kWindows;
  std::vector<double> sizes;
  for (std::size_t i = 0; i < windows; i += stride)
    if (const auto value = contrast(points, i, lag)) sizes.push_back(std::abs(*value));
  if (sizes.empty() || 2 * sizes.size() * stride < windows) return {};
  return robust_deviation(sizes);
}

double spacing(const std::vector<Vec2>& points, std::size_t lag) {
  std::vector<double> chords;
  for (std::size_t i = 0; i + lag < points.size(); i += 1 + points.size() / kWindows)
    chords.push_back((points[i + lag] - points[i]).norm());
  return median(std::move(chords));
}

// A smooth shape adds 8 times as much to the difference at twice the lag.
double without_shape(double near, std::optional<double> far) {
  if (!far || *far < 1.5 * near) return near;
  return std::sqrt(std::max(0.0, near * near - (*far * *far - near * near) / 63));
}

}  // namespace

Noise noise_of(const std::vector<Vec2>& points) {
  Noise noise;
  for (; points.size() >= 4 * 3 * noise.lag || noise.lag == 1; noise.lag *= 2) {
    const auto sigma = sigma_at(points, noise.lag);
    if (!sigma) continue;
    noise.sigma = without_shape(*sigma, sigma_at(points, 2 * noise.lag));
    if (spacing(points, noise.lag) >= kClearlyApart * noise.sigma) return noise;
  }
  noise.lag = std::max<std::size_t>(1, noise.lag / 2);
  return noise;
}

double greatest_of(std::size_t count, double probability) {
  const double tail = -std::expm1(std::log(probability) / static_cast<double>(count));
  double low = 0, high = 40;
  while (high - low > 1e-9) {
    const double middle = (low + high) / 2;
    (std::erfc(middle / std::sqrt(2.0)) > tail ? low : high) = middle;
  }
  return high;
}

}  // namespace lamwright::fitting
