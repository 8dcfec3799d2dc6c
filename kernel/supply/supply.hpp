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
  Part part;         // with this piece's own marks
  std::string name;  // unique on all sheets
  Placing placing;   // of the part's sheet coordinates
};

// A nested sheet of board.
struct CutSheet {
  std::string board;               // "plywood-18"
  double thickness = 0;            // of the board as measured, mm
  Vec2 size{0, 0};                 // length and height, mm
  double margin = 0;               // kept free along its edges, mm
  std::vector<SheetPiece> pieces;  // left to right
  double used = 0;                 // length from its left edge to the last piece and the margin behind it, mm
  double yield =
      0;  // area of the pieces over that of the sheet; of the last one of a board over its used length

  Box2 box() const { return {{0, 0}, size}; }  // of the whole sheet
};

// Lengths of timber of one section, to cut beams, bearers and blocks from. `wanted` goes by part name.
struct TimberCut {
  std::string stock;                 // "D40 46 x 90"
  std::vector<WantedLength> wanted;  // beams, bearers and blocks
  LengthPlan plan;                   // which piece comes from which length
};

// One sheet that is cut for the press, as it is cut: `girth` is its own developed length, `cut` the length
// that it is cut to. `count` of one panel (what is no ply belongs to the press), `total` of all.
struct PackSheet {
  // What becomes of it: part of the panel, or of the press.
  enum class Kind { ply, cover, sheathing, liner, caul };
  Kind kind = Kind::ply;                 // a caul is one without slats
  int ply = 0;                           // number of a ply from the inner face, from 1
  std::string use;                       // "ply 3", "cover", "sheathing"
  std::string stock;                     // "birch-yellow", "hardboard-3"
  double thickness = 0;                  // mm
  std::optional<double> grain;           // of its face, radians from the girth; none where it has none
  double girth = 0, cut = 0, width = 0;  // mm; `width` along the press, trim included
  int count = 1, total = 1;              // sheets alike
};

// Sheets of the pack of one material laid out on its boards.
struct BlankSheets {
  std::string board;                    // the `stock` of the sheets on it
  double thickness = 0;                 // mm
  RectangleSheet sheet;                 // size, kerf and margin
  std::vector<WantedRectangle> wanted;  // for all panels of the job
  RectanglePlan plan;                   // where each lies
};

// A thing to buy or to have at hand. Quantities for one panel and for the job's count; what belongs to the
// press is the same for both.
struct SupplyItem {
  std::string name;         // as its price is looked up: "plywood-18", "D40 46 x 90", "strap-50"
  std::string use;          // for people
  double one = 0, all = 0;  // in `unit`; for one panel, for all
  std::string unit;         // "piece", "sheet", "m", "m2", "kg"
};

// Everything that is bought and cut. Order in every list is that of the lists people get.
struct Supply {
  std::vector<CutSheet> sheets;      // flat parts of the press on whole boards
  std::vector<TimberCut> timber;     // of each section
  std::vector<PackSheet> pack;       // inner to outer, then covers and what lies on the formers
  std::vector<BlankSheets> blanks;   // for the job's count
  std::vector<SupplyItem> material;  // sheets, timber, slats, veneer, glue
  std::vector<SupplyItem> hardware;  // screws, straps, pins, clamps, tape
  std::vector<std::string> notes;    // what does not fit or is missing, plain sentences
};

}  // namespace lamwright
