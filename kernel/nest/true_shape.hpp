// Flat parts onto stock sheets by their true shape.
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "kernel/part/outline.hpp"
#include "kernel/part/placing.hpp"

namespace lamwright {

// Which turns of a piece are allowed: boards with grain keep it.
enum class Turns { any_quarter, half_turn, none };

// Pieces alike that are to be laid down.
struct NestPiece {
  std::string name;                  // for messages
  Outline outline;                   // mm, anywhere
  int count = 1;                     // 0 or more
  Turns turns = Turns::any_quarter;  // besides the way it was drawn
};

// The rectangle from (0, 0) to size; nothing comes nearer to its edges than `margin`, no two outlines nearer
// to one another than `spacing` (true shape, arcs as arcs). `most_sheets` 0: as many as are needed.
struct NestSheet {
  Vec2 size{0, 0};      // length and height, mm
  double margin = 0;    // mm, 0 or more
  double spacing = 0;   // mm, 0 or more
  int most_sheets = 0;  // 0 or more
};

// One piece as it lies.
struct NestedAt {
  std::size_t piece = 0;  // index of NestPiece
  int sheet = 0;          // from 0
  Placing placing;        // of its outline, on the sheet
};

// Where every piece lies, and what does not.
struct NestResult {
  std::vector<NestedAt> placed;  // by sheet, then left to right
  int sheets = 0;                // that pieces lie on
  double used = 0;               // length of the last sheet from its left end to the right end of its pieces
  std::vector<std::size_t> oversize;  // pieces that no allowed turn fits on an empty sheet
  std::vector<int> left_over;         // of each piece, what most_sheets had no room for
};

// Deterministic: the same input gives the same answer. `step` is called between rounds of the search and may
// throw to stop it. Pieces fill one sheet after the other; the last one is filled from its left end so that
// its rest stays whole. Throws Error (geometry) for a sheet without room inside its margins.
NestResult nest(const std::vector<NestPiece>& pieces, const NestSheet& sheet,
                const std::function<void()>& step = {});

}  // namespace lamwright
