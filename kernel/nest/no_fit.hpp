// Where a piece must not lie beside another: no-fit zones.
#pragma once
#include <map>
#include <optional>
#include <tuple>

#include "kernel/nest/shape.hpp"

namespace lamwright::nesting {

struct GridEdge {
  GridPoint from, to;
  GridBox box;
  double per_square = 0;  // 1 / length^2

  GridEdge moved(GridPoint by) const { return {from + by, to + by, box.moved(by), per_square}; }
};

// From its beginning along its length, as real numbers, which hold those of the grid exactly.
struct RealEdge {
  double x = 0, y = 0, along = 0, up = 0;
  double per_square = 0;  // 1 / length^2
};

// Open region of forbidden places of a moving piece's low corner, seen from the low corner of the piece that
// lies.
class Zone {
 public:
  explicit Zone(const std::vector<GridLoop>& loops);

  const std::vector<GridEdge>& edges() const { return edges_; }
  const std::vector<RealEdge>& real_edges() const { return real_edges_; }  // the same
  const GridBox& box() const { return box_; }
  bool forbids(GridPoint p) const;  // strictly inside

 private:
  struct Ends {
    GridPoint from, to;
  };

  void divide();
  Grid band(Grid y) const { return (y - box_.low.y) >> shift_; }

  std::vector<GridEdge> edges_;
  std::vector<RealEdge> real_edges_;
  GridBox box_;
  // Edges by height: those that meet each of equal bands of the box, from below, one after another.
  std::vector<Ends> by_band_;
  std::vector<std::uint32_t> begins_;  // of each band in by_band_, and its end
  int shift_ = 0;                      // a band is 2^shift_ high
};

// Zones of pairs of pieces that keep `spacing` (units of the grid), made when first asked for.
class NoFit {
 public:
  NoFit(const std::vector<Shape>& shapes, Grid spacing)
      : shapes_(shapes), spacing_(spacing), zones_(16 * shapes.size() * shapes.size()) {}

  const Zone& zone(std::size_t lying, int lying_turn, std::size_t moving, int moving_turn);

 private:
  const std::vector<GridLoop>& turned_back(std::size_t lying, std::size_t moving, int turn);

  const std::vector<Shape>& shapes_;
  Grid spacing_ = 0;
  std::map<std::tuple<std::size_t, std::size_t, int>, std::vector<GridLoop>> loops_;
  std::vector<std::optional<Zone>> zones_;
};

}  // namespace lamwright::nesting
