// A drawing at true size cut into pages that are printed, trimmed, taped together and used as a template.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/tile_grid.hpp"

namespace lamwright::drawing {

struct TileSpec {
  std::string paper = "a3";  // or "a4"
  std::string job;           // its title and number, on each page
};

// One page for each used cell of tile_grid(), row by row from the upper left; its title is the drawing's with
// the sheet's code. Lines, arcs and circles are cut at the edge of the page's window; a text that does not
// lie in it whole is lettered and its strokes are cut. Fills and the drawing's own check bars are left out;
// each page has bars of its own across and up. Nothing is drawn nearer than kTileMargin to the paper's edge.
std::vector<Drawing> tiled(const Drawing& full_size, const TileSpec& spec);

}  // namespace lamwright::drawing
