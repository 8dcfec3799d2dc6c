// How a drawing at true size is divided among sheets of paper.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

// Left blank along all four edges of a page: more than printers cannot reach. Common practice, no source.
inline constexpr double kTileMargin = 10;
// Width of the strip that two neighbouring pages both show.
inline constexpr double kTileOverlap = 10;
// Row of notes along the top of a page, above what it shows of the drawing.
inline constexpr double kTileHead = 9;

struct Tile {
  int row = 0;     // 0 is the uppermost
  int column = 0;  // 0 is the leftmost
};

// Cells lie edge to edge over the drawing. A page shows a window: its cell and half of the overlap on each
// side. Cells and windows are in the drawing's coordinates.
struct TileGrid {
  Vec2 page{0, 0};  // size of the paper as it is turned
  Vec2 low{0, 0};   // lower left corner of the lowest, leftmost cell
  Vec2 cell{0, 0};  // size of each
  int rows = 1;
  int columns = 1;
  std::vector<bool>
      used;  // row by row: some of the drawing lies in the cell, or it links others that have some

  bool holds(const Tile& tile) const;  // is on the grid and used
  std::vector<Tile> tiles() const;     // used ones, row by row
  Box2 cell_of(const Tile& tile) const;
  Box2 window_of(const Tile& tile) const;
};

// "A1": the row's letter ("Z", then "AA") and the column's number.
std::string tile_code(const Tile& tile);

// Where a page shows its window.
Box2 window_on_page(const Vec2& page);

// Paper "a4" or "a3", upright or lying, whichever needs fewer pages, lying when both need as many. Used cells
// hang together by their edges, so that sheets can be joined.
TileGrid tile_grid(const Drawing& full_size, const std::string& paper);

}  // namespace lamwright::drawing
