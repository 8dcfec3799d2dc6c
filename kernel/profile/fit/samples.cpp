#include "kernel/profile/fit/samples.hpp"

#include <algorithm>

namespace lamwright::fitting {

std::vector<Sample> means(const std::vector<Vec2>& points, std::size_t most) {
  const std::size_t size = (points.size() + most - 1) / most;
  std::vector<Sample> out;
  out.reserve(points.size() / size + 1);
  for (std::size_t i = 0; i < points.size(); i += size) {
    const std::size_t count = std::min(size, points.size() - i);
    Vec2 sum{0, 0};
    for (std::size_t j = 0; j < count; ++j) sum += points[i + j];
    out.push_back({sum / static_cast<double>(count), static_cast<double>(count)});
  }
  return out;
}

std::vector<Sample> singles(const std::vector<Vec2>& points) { return means(points, points.size()); }

}  // namespace lamwright::fitting
