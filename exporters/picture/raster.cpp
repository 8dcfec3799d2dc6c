#include "exporters/picture/raster.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace lamwright::picture {

// Depth over the picture, kept within what the triangle's corners have: a sliver's slopes are mostly
// rounding.
struct Plane {
  Spot at;
  double by_x = 0, by_y = 0;
  double least = 0, most = 0;

  double depth(double x, double y) const {
    return std::clamp(at.depth + by_x * (x - at.x) + by_y * (y - at.y), least, most);
  }
};

namespace {

double twice_area(const Spot& a, const Spot& b, const Spot& c) {
  return (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
}

Plane plane_of(const Spot& a, const Spot& b, const Spot& c, double area) {
  const double ab = b.depth - a.depth, ac = c.depth - a.depth;
  const auto [least, most] = std::minmax({a.depth, b.depth, c.depth});
  return {a, (ab * (c.y - a.y) - ac * (b.y - a.y)) / area, (ac * (b.x - a.x) - ab * (c.x - a.x)) / area,
          least, most};
}

// The first sample whose middle lies past `at`, or 0 where that is one before the first.
int first_past(double at) { return int(at + 0.5); }

// From the upper end to the lower one: the same numbers for both triangles at an edge, whichever way round
// they have it, so that they meet without a gap.
struct Side {
  double x = 0, y = 0, slope = 0;

  Side(const Spot& upper, const Spot& lower)
      : x(upper.x), y(upper.y), slope(lower.y > upper.y ? (lower.x - upper.x) / (lower.y - upper.y) : 0) {}
  double at(double row) const { return x + slope * (row - y); }
};

}  // namespace

bool holds_sample(double low, double high) { return first_past(low) < first_past(high); }

Raster::Raster(int width, int first, int last)
    : width_(width),
      first_(first),
      last_(last),
      depths_(std::size_t(width) * std::size_t(last - first + 1)),
      tones_(depths_.size()) {
  restart(first);
}

void Raster::restart(int first) {
  last_ += first - first_;
  first_ = first;
  std::fill(depths_.begin(), depths_.end(), -std::numeric_limits<float>::infinity());
  std::fill(tones_.begin(), tones_.end(), kPaper);
}

void Raster::add_triangle(const Spot& a, const Spot& b, const Spot& c, Tone tone) {
  const double area = twice_area(a, b, c);
  if (area == 0) return;
  const Plane plane = plane_of(a, b, c, area);
  const Spot *top = &a, *middle = &b, *bottom = &c;
  if (middle->y < top->y) std::swap(top, middle);
  if (bottom->y < middle->y) std::swap(middle, bottom);
  if (middle->y < top->y) std::swap(top, middle);
  const Side through(*top, *bottom), upper(*top, *middle), lower(*middle, *bottom);
  const int end = std::min(first_past(bottom->y), last_ + 1);
  for (int y = std::max(first_past(top->y), first_); y < end; ++y) {
    const double row = y + 0.5, one = through.at(row),
                 other = row <= middle->y ? upper.at(row) : lower.at(row);
    add_span(y, std::min(one, other), std::max(one, other), plane, tone);
  }
}

void Raster::add_span(int y, double left, double right, const Plane& plane, Tone tone) {
  const int from = std::max(first_past(left), 0), to = std::min(first_past(right), width_);
  if (from >= to) return;
  const double first = plane.depth(from + 0.5, y + 0.5), last = plane.depth(to - 0.5, y + 0.5);
  const float start = float(first), step = float(to - from > 1 ? (last - first) / (to - from - 1) : 0);
  float* const depths = &depths_[index(from, y)];
  Tone* const tones = &tones_[index(from, y)];
  // Without a branch the compiler takes several samples at a time.
  for (int i = 0; i < to - from; ++i) {
    const float depth = start + step * float(i);
    const Tone nearer = -Tone(depth > depths[i]);  // all ones, or none
    tones[i] = (tone & nearer) | (tones[i] & ~nearer);
    depths[i] = std::max(depths[i], depth);
  }
}

// Only where the samples on both sides are nearer too: beside an edge of its own a face seen at a small angle
// may be much nearer than the edge is.
bool Raster::covered(int x, int y, int across_x, int across_y, double depth) const {
  for (const int side : {0, -1, 1}) {
    const int i = x + side * across_x, j = y + side * across_y;
    if (!holds(i, j)) return false;
    if (depths_[index(i, j)] <= depth) return false;
  }
  return true;
}

// Of 0 to `steps` those that may lie in the rows held.
std::pair<int, int> Raster::steps_in(double from, double change, int steps) const {
  if (std::abs(change) < 1) return {0, steps};
  const double first = steps * ((first_ - from) / change), last = steps * ((last_ + 1 - from) / change);
  return {std::max(0, int(std::floor(std::min(first, last)))),
          std::min(steps, int(std::ceil(std::max(first, last))))};
}

void Raster::add_edge(const Spot& a, const Spot& b) {
  constexpr double kNear = 1;  // samples: less than a thin sheet's thickness in most pictures
  const double dx = b.x - a.x, dy = b.y - a.y, dz = b.depth - a.depth;
  const bool level = std::abs(dx) >= std::abs(dy);
  const int steps = std::max(1, int(std::ceil(std::max(std::abs(dx), std::abs(dy)))));
  const double slack = kNear + std::abs(dz) / (2 * steps);
  const auto [from, to] = steps_in(a.y, dy, steps);
  for (int i = from; i <= to; ++i) {
    const double share = double(i) / steps;
    const int x = int(a.x + share * dx), y = int(std::floor(a.y + share * dy));
    if (!holds(x, y)) continue;
    if (!covered(x, y, level ? 0 : 1, level ? 1 : 0, a.depth + share * dz + slack))
      tones_[index(x, y)] = kInk;
  }
}

}  // namespace lamwright::picture
