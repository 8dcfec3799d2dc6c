// Samples of some rows of a picture with what is nearest to the eye at each.
#pragma once
#include <utility>
#include <vector>

#include "exporters/picture/tones.hpp"

namespace lamwright::picture {

// In samples: x to the right, y down, the first sample's middle at (0.5, 0.5); depth grows toward the eye.
struct Spot {
  double x = 0, y = 0, depth = 0;
};

// Whether a stretch along x or y holds some sample's middle: what is smaller, as most of a bore in a large
// press, draws nothing.
bool holds_sample(double low, double high);

class Raster {
 public:
  // Holds rows `first` to `last`, which may lie outside the picture, all paper.
  Raster(int width, int first, int last);
  // The same for other rows, as many.
  void restart(int first);

  // Where it is nearer than what is there. Triangles that share an edge leave no sample between them out and
  // share none.
  void add_triangle(const Spot& a, const Spot& b, const Spot& c, Tone tone);
  // One sample wide, in ink, where nothing nearer covers it: to be added after the triangles, whose own edges
  // count as not covered. Right in all rows but the first and the last, whose neighbours are not known.
  void add_edge(const Spot& a, const Spot& b);

  const Tone* row(int y) const { return &tones_[index(0, y)]; }

 private:
  bool holds(int x, int y) const { return x >= 0 && x < width_ && y >= first_ && y <= last_; }
  std::size_t index(int x, int y) const {
    return std::size_t(y - first_) * std::size_t(width_) + std::size_t(x);
  }
  void add_span(int y, double left, double right, const struct Plane& plane, Tone tone);
  std::pair<int, int> steps_in(double from, double change, int steps) const;
  bool covered(int x, int y, int across_x, int across_y, double depth) const;

  int width_, first_, last_;
  std::vector<float> depths_;
  std::vector<Tone> tones_;
};

}  // namespace lamwright::picture
