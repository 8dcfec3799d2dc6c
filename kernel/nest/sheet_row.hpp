// All sheets of a nest on one plane: side by side, too far apart for pieces on two of them to meet.
#pragma once
#include "kernel/nest/spots.hpp"

namespace lamwright::nesting {

class SheetRow {
 public:
  // `board` inside the margins, more than the spacing long; the last of the `count` sheets ends at `end`.
  SheetRow(const Vec2& board, int count, double end)
      : board_(board), count_(count), end_(end), pitch_(2 * static_cast<Grid>(board.x())) {}

  SheetRow with_end(double end) const { return {board_, count_, end}; }

  int count() const { return count_; }
  double end() const { return end_; }
  double length() const { return board_.x(); }
  Grid left(int sheet) const { return sheet * pitch_; }
  int sheet(GridPoint at) const;  // the nearest one
  // Of a piece of this size on a sheet.
  Room room(const Vec2& size, int sheet) const;
  // The nearest place on the nearest sheet; only where that sheet has room.
  GridPoint clamped(const Vec2& size, GridPoint at) const;

 private:
  Vec2 board_;
  int count_ = 0;
  double end_ = 0;
  Grid pitch_ = 0;
};

using Sheets = std::vector<std::vector<Laid>>;

std::vector<Laid> side_by_side(const Sheets& sheets, const SheetRow& row);
// Sheets left empty are dropped.
Sheets apart(const std::vector<Laid>& laid, const SheetRow& row);

}  // namespace lamwright::nesting
