// What is bought and cut for a job: sheets, lengths of timber, ply blanks, small things.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/nest/lengths.hpp"
#include "kernel/nest/rectangles.hpp"
#include "kernel/part/part.hpp"
#include "kernel/part/placing.hpp"

namespace lamwright {

// One flat part on its sheet, marks filled in ("station 3 of 6"). `name` is the body's, "former-lower-03".
struct SheetPiece {
  Part part;
  std::string name;
  Placing placing;  // of the part's sheet coordinates
};

// A nested sheet of board.
struct CutSheet {
  std::string board;  // "plywood-18"
  double thickness = 0;
  Vec2 size{0, 0};
  double margin = 0;
  std::vector<SheetPiece> pieces;
  double used = 0;  // length from its left edge to the last piece and the margin behind it, mm
  double yield =
      0;  // area of the pieces over that of the sheet; of the last one of a board over its used length

  Box2 box() const { return {{0, 0}, size}; }
};

// Lengths of timber of one section, to cut beams, bearers and blocks from. `wanted` goes by part name.
struct TimberCut {
  std::string stock;  // "D40 46 x 90"
  std::vector<WantedLength> wanted;
  LengthPlan plan;
};

// One sheet that is cut for the press, as it is cut: `girth` is its own developed length, `cut` the length
// that it is cut to. `count` of one panel (what is no ply belongs to the press), `total` of all.
struct PackSheet {
  enum class Kind { ply, cover, sheathing, liner, caul };
  Kind kind = Kind::ply;
  int ply = 0;        // number of a ply from the inner face, from 1
  std::string use;    // "ply 3", "cover", "sheathing"
  std::string stock;  // "birch-yellow", "hardboard-3"
  double thickness = 0;
  std::optional<double> grain;  // of its face, radians from the girth; none where it has none
  double girth = 0, cut = 0, width = 0;
  int count = 1, total = 1;
};

// Sheets of the pack of one material laid out on its boards.
struct BlankSheets {
  std::string board;
  double thickness = 0;
  RectangleSheet sheet;
  std::vector<WantedRectangle> wanted;
  RectanglePlan plan;
};

// A thing to buy or to have at hand. Quantities for one panel and for the job's count; what belongs to the
// press is the same for both.
struct SupplyItem {
  std::string name;  // as its price is looked up: "plywood-18", "D40 46 x 90", "strap-50"
  std::string use;
  double one = 0, all = 0;
  std::string unit;  // "piece", "sheet", "m", "m2", "kg"
};

struct Supply {
  std::vector<CutSheet> sheets;
  std::vector<TimberCut> timber;
  std::vector<PackSheet> pack;
  std::vector<BlankSheets> blanks;   // for the job's count
  std::vector<SupplyItem> material;  // sheets, timber, slats, veneer, glue
  std::vector<SupplyItem> hardware;  // screws, straps, pins, clamps, tape
  std::vector<std::string> notes;    // what does not fit or is missing, plain sentences
};

}  // namespace lamwright
