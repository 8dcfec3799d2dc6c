#include "exporters/drawing/tile_grid.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/sheet.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

std::size_t index(const TileGrid& grid, const Tile& tile) {
  return static_cast<std::size_t>(tile.row) * static_cast<std::size_t>(grid.columns) +
         static_cast<std::size_t>(tile.column);
}

int count_of(double length, double cell) {
  return std::max(1, static_cast<int>(std::ceil(length / cell - kWholeNumber)));
}

TileGrid empty_grid(const Vec2& drawing, const Vec2& page) {
  TileGrid grid;
  grid.page = page;
  grid.cell = window_on_page(page).size() - Vec2(kTileOverlap, kTileOverlap);
  grid.columns = count_of(drawing.x(), grid.cell.x());
  grid.rows = count_of(drawing.y(), grid.cell.y());
  // Not in the middle: the centre line of a symmetrical part would fall on a joint or its crosses.
  constexpr double kShare = 0.35;
  grid.low = kShare * (drawing - grid.cell.cwiseProduct(Vec2(grid.columns, grid.rows)));
  return grid;
}

Clearance without_bars(const Drawing& drawing) {
  Clearance out({{0, 0}, drawing.size()});
  for (const Item& item : drawing.items())
    if (drawing.pens()[item.pen].name != kCheckPen) out.add(item.shape, true);
  return out;
}

std::vector<Tile> all_tiles(const TileGrid& grid) {
  std::vector<Tile> out;
  for (int row = 0; row < grid.rows; ++row)
    for (int column = 0; column < grid.columns; ++column) out.push_back({row, column});
  return out;
}

// Used cells that can be reached from the first by way of used ones.
std::vector<bool> reached(const TileGrid& grid) {
  std::vector<bool> seen(grid.used.size(), false);
  std::vector<Tile> next;
  const auto visit = [&](const Tile& tile) {
    if (!grid.holds(tile) || seen[index(grid, tile)]) return;
    seen[index(grid, tile)] = true;
    next.push_back(tile);
  };
  visit(grid.tiles().front());
  while (!next.empty()) {
    const Tile at = next.back();
    next.pop_back();
    for (const int step : {-1, 1}) {
      visit({at.row + step, at.column});
      visit({at.row, at.column + step});
    }
  }
  return seen;
}

// In the column all cells from the first used one to the last.
void fill_column(TileGrid& grid, int column) {
  int first = grid.rows, last = -1;
  for (int row = 0; row < grid.rows; ++row)
    if (grid.holds({row, column})) {
      first = std::min(first, row);
      last = row;
    }
  for (int row = first; row <= last; ++row) grid.used[index(grid, {row, column})] = true;
}

// Cells that lie inside a part are linked to its outline, which hangs together, above and below them.
void link(TileGrid& grid) {
  const std::vector<bool> linked = reached(grid);
  for (const Tile& tile : grid.tiles())
    if (!linked[index(grid, tile)]) fill_column(grid, tile.column);
  if (reached(grid) != grid.used) grid.used.assign(grid.used.size(), true);
}

TileGrid filled_grid(const Vec2& size, const Clearance& drawn, const Vec2& page) {
  TileGrid grid = empty_grid(size, page);
  for (const Tile& tile : all_tiles(grid)) grid.used.push_back(!drawn.free(grid.cell_of(tile)));
  if (grid.tiles().empty()) grid.used.assign(grid.used.size(), true);
  link(grid);
  return grid;
}

}  // namespace

bool TileGrid::holds(const Tile& tile) const {
  return tile.row >= 0 && tile.row < rows && tile.column >= 0 && tile.column < columns &&
         used[index(*this, tile)];
}

std::vector<Tile> TileGrid::tiles() const {
  std::vector<Tile> out = all_tiles(*this);
  std::erase_if(out, [&](const Tile& tile) { return !holds(tile); });
  return out;
}

Box2 TileGrid::cell_of(const Tile& tile) const {
  const Vec2 corner = low + cell.cwiseProduct(Vec2(tile.column, rows - 1 - tile.row));
  return {corner, corner + cell};
}

Box2 TileGrid::window_of(const Tile& tile) const { return grown(cell_of(tile), kTileOverlap / 2); }

std::string tile_code(const Tile& tile) {
  std::string letters;
  for (int row = tile.row; row >= 0; row = row / 26 - 1)
    letters.insert(letters.begin(), static_cast<char>('A' + row % 26));
  return letters + std::to_string(tile.column + 1);
}

Box2 window_on_page(const Vec2& page) {
  return {{kTileMargin, kTileMargin}, page - Vec2(kTileMargin, kTileMargin + kTileHead)};
}

TileGrid tile_grid(const Drawing& full_size, const std::string& paper) {
  const Paper sheet = papers_from(paper).front();
  const Clearance drawn = without_bars(full_size);
  const TileGrid lying = filled_grid(full_size.size(), drawn, {sheet.width, sheet.height});
  const TileGrid upright = filled_grid(full_size.size(), drawn, {sheet.height, sheet.width});
  return upright.tiles().size() < lying.tiles().size() ? upright : lying;
}

}  // namespace lamwright::drawing
