#include "kernel/nest/settling.hpp"

#include <cmath>

namespace lamwright::nesting {
namespace {

using Stretches = std::vector<std::pair<double, double>>;

class Settling {
 public:
  Settling(std::vector<Laid> laid, const SheetRow& row, NoFit& no_fit)
      : laid_(std::move(laid)), row_(row), no_fit_(no_fit) {}

  std::vector<Laid> run() {
    std::stable_sort(laid_.begin(), laid_.end(),
                     [](const Laid& a, const Laid& b) { return a.at.x < b.at.x; });
    for (std::size_t i = 0; i < laid_.size(); ++i) laid_[i].at.x = cleared(i);
    for (std::size_t i = 0; i < laid_.size(); ++i) laid_[i].at.x = slid(i);
    return std::move(laid_);
  }

 private:
  const Zone& zone(std::size_t of, std::size_t moving) {
    return no_fit_.zone(laid_[of].piece, laid_[of].turn, laid_[moving].piece, laid_[moving].turn);
  }

  // Forbidden to piece i at its height by the first `count` others.
  Stretches forbidden(std::size_t i, std::size_t count) {
    Stretches out;
    for (std::size_t j = 0; j < count; ++j) {
      if (j == i) continue;
      const double by = static_cast<double>(laid_[j].at.x);
      for (const auto& [from, to] : forbidden_along(zone(j, i), laid_[i].at.y - laid_[j].at.y))
        out.emplace_back(from + by, to + by);
    }
    std::sort(out.begin(), out.end());
    return out;
  }

  bool clear(std::size_t i, Grid x, std::size_t count) {
    for (std::size_t j = 0; j < count; ++j)
      if (j != i && zone(j, i).forbids(GridPoint{x, laid_[i].at.y} - laid_[j].at)) return false;
    return true;
  }

  Grid cleared(std::size_t i) {
    Grid x = laid_[i].at.x;
    if (clear(i, x, i)) return x;
    for (const auto& [from, to] : forbidden(i, i))
      if (static_cast<double>(x) > from && static_cast<double>(x) < to) x = static_cast<Grid>(std::ceil(to));
    while (!clear(i, x, i)) ++x;  // ends of stretches are rounded: whole numbers decide
    return x;
  }

  Grid slid(std::size_t i) {
    double least = static_cast<double>(row_.left(row_.sheet(laid_[i].at)));
    for (const auto& [from, to] : forbidden(i, laid_.size()))
      if (to <= static_cast<double>(laid_[i].at.x) + 1) least = std::max(least, to);
    const Grid x = static_cast<Grid>(std::ceil(least)) + 1;  // ends of stretches are rounded
    return x < laid_[i].at.x && clear(i, x, laid_.size()) ? x : laid_[i].at.x;
  }

  std::vector<Laid> laid_;
  const SheetRow& row_;
  NoFit& no_fit_;
};

}  // namespace

std::optional<std::vector<Laid>> settled(std::vector<Laid> laid, const std::vector<Shape>& shapes,
                                         const SheetRow& row, NoFit& no_fit) {
  std::vector<Laid> out = Settling(std::move(laid), row, no_fit).run();
  for (const Laid& l : out) {
    const int on = row.sheet(l.at);
    if (l.at.x - row.left(on) > row.room(shapes[l.piece].size[l.turn], on).right) return std::nullopt;
  }
  return out;
}

}  // namespace lamwright::nesting
