// Fewer samples that tell as much: means of neighbours.
#pragma once
#include "kernel/profile/fit/path.hpp"

namespace lamwright::fitting {

// Means of neighbouring points, at most `most` of them, each of as many points as the next, but for the last.
// The mean of points on an arc of length l lies l^2 k / 24 inside it.
std::vector<Sample> means(const std::vector<Vec2>& points, std::size_t most);

// Every point by itself.
std::vector<Sample> singles(const std::vector<Vec2>& points);

}  // namespace lamwright::fitting
