// Tables of a sheet: one under the other, and where there is room a second column beside them.
#pragma once
#include <vector>

#include "exporters/drawing/table.hpp"

namespace lamwright::drawing {

inline constexpr double kTableGap = 2;  // under each table, and twice that between columns

struct TableBlock {
  std::vector<Table> first;
  std::vector<Table> second;  // beside the first column, or under it

  // Whether both columns stand side by side within a width.
  bool side_by_side(double width) const;
  Vec2 size(double width) const;
};

// `corner` is the upper left one.
void add_tables(Drawing& drawing, const TableBlock& block, double width, const Vec2& corner);

// A table of many rows folded into columns of at most `rows` rows, side by side; what does not fit `columns`
// of them is counted in the last row.
Table folded(const Table& table, std::size_t rows, std::size_t columns);

}  // namespace lamwright::drawing
