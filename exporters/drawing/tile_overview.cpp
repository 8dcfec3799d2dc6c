#include <algorithm>
#include <optional>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/one_two_five.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/tile_notes.hpp"
#include "exporters/drawing/view.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kRoom = 2;
constexpr double kLine = 2.8;   // of its caption
constexpr double kApart = 1.2;  // lines of the net: closer ones run into grey

struct Overview {
  const TileGrid& grid;
  View view;     // from the drawing to the page
  int step = 1;  // sheets from one line of the net to the next
  std::vector<std::string> caption;

  Vec2 size() const {
    double width = view.scale * grid.cell.x() * grid.columns;
    for (const std::string& text : caption) width = std::max(width, text_width(text, kLabelHeight));
    const double height =
        view.scale * grid.cell.y() * grid.rows + kLine * static_cast<double>(caption.size());
    return Vec2(width, height) + Vec2(2 * kRoom, 2 * kRoom);
  }
  Vec2 low() const { return Vec2(kRoom, kRoom + kLine * static_cast<double>(caption.size())); }
  Box2 cell(const Tile& tile) const { return view.paper(grid.cell_of(tile)); }
};

Overview overview_of(const TileGrid& grid, const Tile& tile, double longest) {
  const Vec2 all = grid.cell.cwiseProduct(Vec2(grid.columns, grid.rows));
  const double scale = longest / all.maxCoeff();
  Overview out{grid,
               {scale, {0, 0}},
               every_one_two_five(scale * grid.cell.minCoeff(), kApart),
               {"this is sheet " + tile_code(tile)}};
  if (out.step > 1)
    out.caption.push_back("a line every " + std::to_string(out.step) + " sheets");
  else if (grid.tiles().size() < grid.used.size())
    out.caption.push_back("crossed: no sheet, nothing to draw");
  return out;
}

// Where there is room for it, from the top down; smaller where there is none for a large one.
std::optional<Overview> placed(const Drawing& page, const TileGrid& grid, const Tile& tile) {
  const Clearance& taken = page.taken();
  const Box2 field = grown(window_on_page(grid.page), -kTileOverlap / 2);
  for (const double longest : {45.0, 35.0, 26.0}) {
    Overview map = overview_of(grid, tile, longest);
    const auto place = last_place(field, map.size(), kPlaceStep, [&](const Vec2& corner) {
      return taken.free(Box2{corner, corner + map.size()});
    });
    if (!place) continue;
    map.view.origin = *place + map.low() - map.view.scale * grid.low;
    return map;
  }
  return std::nullopt;
}

// The net of cells in a few long lines: it is drawn on every page.
void add_net(Drawing& page, const Overview& map) {
  const TileGrid& grid = map.grid;
  const Box2 all{map.cell({grid.rows - 1, 0}).low, map.cell({0, grid.columns - 1}).high};
  page.add(kOverviewPen, rectangle(all));
  for (int row = map.step; row < grid.rows; row += map.step) {
    const double y = map.cell({row, 0}).high.y();
    page.add(kOverviewPen, line({all.low.x(), y}, {all.high.x(), y}));
  }
  for (int column = map.step; column < grid.columns; column += map.step) {
    const double x = map.cell({0, column}).low.x();
    page.add(kOverviewPen, line({x, all.low.y()}, {x, all.high.y()}));
  }
}

// A cell too small to be seen, as large as it must be.
Path spot(const Overview& map, const Tile& tile) {
  const Box2 cell = map.cell(tile);
  const Vec2 middle = (cell.low + cell.high) / 2, half = Vec2(kApart, kApart) / 2;
  return rectangle({middle - half, middle + half}, "#808080");
}

// Cells side by side without a sheet are crossed as one.
void add_crosses(Drawing& page, const Overview& map) {
  for (int row = 0; row < map.grid.rows; ++row)
    for (int column = 0; column < map.grid.columns; ++column) {
      if (map.grid.holds({row, column})) continue;
      const Vec2 low = map.cell({row, column}).low;
      while (column + 1 < map.grid.columns && !map.grid.holds({row, column + 1})) ++column;
      const Vec2 high = map.cell({row, column}).high;
      page.add(kOverviewPen, line(low, high));
      page.add(kOverviewPen, line({low.x(), high.y()}, {high.x(), low.y()}));
    }
}

}  // namespace

void add_overview(Drawing& page, const TileGrid& grid, const Tile& tile, const Drawing& full_size) {
  const auto map = placed(page, grid, tile);
  if (!map) return;
  const bool single_cells = map->step == 1;
  page.add(kOverviewFillPen, single_cells ? rectangle(map->cell(tile), "#d9d9d9") : spot(*map, tile));
  add_net(page, *map);
  if (single_cells) add_crosses(page, *map);
  for (const Item& item : full_size.items())
    if (const auto* path = std::get_if<Path>(&item.shape); path && path->closed)
      page.add(kTilePen, Path{map->view.paper(path->segments), true, {}});
  Vec2 at = map->view.paper(grid.low);
  for (const std::string& text : map->caption) {
    at.y() -= kLine;
    page.add(kTilePen, Text{at, text, kLabelHeight});
  }
}

}  // namespace lamwright::drawing
