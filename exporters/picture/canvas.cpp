#include "exporters/picture/canvas.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright::picture {
namespace {

constexpr int kRows = 32;      // of a band
constexpr int kNeighbour = 1;  // row above and below that edges look at

}  // namespace

Canvas::Canvas(int width, int height)
    : width_(width), height_(height), bands_(std::size_t((height + kRows - 1) / kRows)) {}

void Canvas::add_triangle(const Spot& a, const Spot& b, const Spot& c, Tone tone) {
  const auto [low, high] = std::minmax({a.y, b.y, c.y});
  const auto [left, right] = std::minmax({a.x, b.x, c.x});
  if (!holds_sample(low, high) || !holds_sample(left, right)) return;
  const int last = std::min(int(bands_.size()) - 1, int(std::floor((high + kNeighbour) / kRows)));
  for (int i = std::max(0, int(std::floor((low - kNeighbour) / kRows))); i <= last; ++i)
    bands_[std::size_t(i)].faces.push_back(faces_.size());
  faces_.push_back({a, b, c, tone});
}

void Canvas::add_edge(const Spot& a, const Spot& b) {
  const auto [low, high] = std::minmax({a.y, b.y});
  const int last = std::min(int(bands_.size()) - 1, int(std::floor(high / kRows)));
  for (int i = std::max(0, int(std::floor(low / kRows))); i <= last; ++i)
    bands_[std::size_t(i)].edges.push_back(edges_.size());
  edges_.push_back({a, b});
}

void Canvas::draw(const Use& use) const {
  Raster raster(width_, -kNeighbour, kRows - 1 + kNeighbour);
  int from = 0;
  for (const Band& band : bands_) {
    raster.restart(from - kNeighbour);
    for (const std::size_t i : band.faces)
      raster.add_triangle(faces_[i].a, faces_[i].b, faces_[i].c, faces_[i].tone);
    for (const std::size_t i : band.edges) raster.add_edge(edges_[i].a, edges_[i].b);
    use(raster, from, std::min(from + kRows, height_));
    from += kRows;
  }
}

}  // namespace lamwright::picture
