// Points that look wrong by what they cost: runs that nothing but they ask for.
#pragma once
#include <functional>
#include <optional>

#include "kernel/profile/fit/measured.hpp"
#include "kernel/profile/fit/path.hpp"

namespace lamwright::fitting {

// The path of the fewest runs through all points but some, by position, rising; none when there is none.
using PathWithout = std::function<std::optional<Path>(const std::vector<std::size_t>&)>;

// The strays known so far and those found: single points, or two beside one another, not at an end, without
// which the profile has at least two runs less for each, and which then lie off it. At most one point in ten.
// Looked for only where a run rests on three points or fewer (or there is no path at all), among up to some
// thousand points.
std::vector<std::size_t> costly_points(const Measured& measured, const std::optional<Path>& path,
                                       const PathWithout& path_without);

}  // namespace lamwright::fitting
