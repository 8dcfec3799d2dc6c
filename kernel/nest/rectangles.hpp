// Rectangles from sheets by straight saw cuts from edge to edge (guillotine), grain kept: ply blanks and
// covers.
#pragma once
#include <string>
#include <vector>

#include "kernel/profile/vector.hpp"

namespace lamwright {

// Pieces alike that are wanted.
struct WantedRectangle {
  std::string name;    // for messages
  Vec2 size{0, 0};     // mm, above 0; along and across the sheet's long side as the grain wants it
  int count = 1;       // 0 or more
  bool turns = false;  // may lie either way
};

// The sheets that pieces are sawn from, all of one size.
struct RectangleSheet {
  Vec2 size{0, 0};    // mm, above 0
  double kerf = 0;    // lost at every cut, 0 or more
  double margin = 0;  // trimmed off all four edges first, 0 or more
};

// A piece on its sheet. `low` counts from the sheet's corner, margin included; a turned piece has its sides
// swapped.
struct RectangleAt {
  std::size_t piece = 0;  // index of what is wanted
  int sheet = 0;          // from 0
  Vec2 low{0, 0};         // lower left corner, mm
  bool turned = false;    // a quarter turn
};

// Where every piece lies.
struct RectanglePlan {
  std::vector<RectangleAt> placed;    // by sheet, then by place; the emptiest sheet is the last
  int sheets = 0;                     // that are sawn into
  std::vector<std::size_t> oversize;  // pieces that no sheet can give
  double yield = 0;                   // area of the pieces over that of the sheets
  int least_sheets = 0;               // no plan needs fewer; equal to `sheets` where the plan is proved
  Vec2 rest_low{0, 0};                // the greatest single rest of the last sheet, its cuts taken off
  Vec2 rest_size{0, 0};               // 0 where there is none
};

// The fewest sheets that are found, then the greatest single rest on the last one. Exact for one size; else
// the best of patterns priced by the linear relaxation and of fillings in several orders. Deterministic.
// Throws Error (geometry) for sizes of 0 or less, negative counts, kerfs or margins, and margins that leave
// nothing.
RectanglePlan cut_rectangles(const std::vector<WantedRectangle>& wanted, const RectangleSheet& sheet);

// One pass of the saw through a part of a sheet, from edge to edge of that part; the blade takes the kerf on
// the far side of the line (greater x, or greater y).
struct SawCut {
  int sheet = 0;              // from 0
  Vec2 from{0, 0}, to{0, 0};  // mm, from the sheet's corner
  int depth = 0;              // cuts that must come before it
};

// The cuts of a plan in an order in which they can be made, without those that trim the margins.
std::vector<SawCut> saw_cuts(const std::vector<WantedRectangle>& wanted, const RectangleSheet& sheet,
                             const RectanglePlan& plan);

}  // namespace lamwright
