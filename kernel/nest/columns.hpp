// Columns of small blocks, side by side.
#pragma once
#include "kernel/nest/layout.hpp"

namespace lamwright::nesting {

// Of kinds that fill their boxes and are small beside the board, as many whole columns from one long edge to
// the other as there are pieces for, each kind in the turn that fills the board best. One arrangement for
// each board, laid at the low corner of an empty one.
std::vector<Arrangement> columns(const std::vector<Shape>& shapes, const std::vector<int>& counts,
                                 const Board& board, NoFit& no_fit);

// Such pieces lie side by side as well as any way.
bool fills_box(const Shape& shape);
// Beside the board: such pieces fill what others leave.
bool small(const Shape& shape, const Board& board);

}  // namespace lamwright::nesting
