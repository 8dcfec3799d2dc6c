// What a page of a divided drawing carries besides its share: how it joins its neighbours and what it is.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/tile_grid.hpp"

namespace lamwright::drawing {

inline constexpr const char* kTilePen = "SHEET_TEXT";
inline constexpr const char* kRegisterPen = "REGISTER";
inline constexpr const char* kSheetTrimPen = "SHEET_TRIM";
inline constexpr const char* kOverviewPen = "OVERVIEW";
inline constexpr const char* kOverviewFillPen = "OVERVIEW_FILL";

// Pens of everything that a page adds, in the order of painting; kCheckPen is the last.
std::vector<Pen> tile_pens();

// What the row of notes says.
struct TileTitle {
  std::string part;
  std::string job;  // title and number
  int page = 1;
  int pages = 1;
};

void add_tile_head(Drawing& page, const Tile& tile, const TileTitle& title);

// Dashed lines along the cell's sides that have a neighbour, crosses at its corners and the middles of those
// sides
// - neighbours have theirs at the same places of the drawing -, and in the overlap the neighbours' codes.
void add_tile_joints(Drawing& page, const TileGrid& grid, const Tile& tile);
void add_neighbour_codes(Drawing& page, const TileGrid& grid, const Tile& tile);

// A small map of all sheets with this one tinted and those that are left out crossed, where there is room for
// it.
void add_overview(Drawing& page, const TileGrid& grid, const Tile& tile, const Drawing& full_size);

}  // namespace lamwright::drawing
