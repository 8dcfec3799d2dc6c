#include "exporters/drawing/table_block.hpp"

#include <algorithm>

namespace lamwright::drawing {
namespace {

Vec2 column_size(const std::vector<Table>& tables) {
  Vec2 size{0, 0};
  for (const Table& table : tables) {
    size.x() = std::max(size.x(), table_size(table).x());
    size.y() += table_size(table).y() + kTableGap;
  }
  return size;
}

void add_column(Drawing& drawing, const std::vector<Table>& tables, Vec2 corner) {
  for (const Table& table : tables) {
    add_table(drawing, table, corner);
    corner.y() -= table_size(table).y() + kTableGap;
  }
}

}  // namespace

bool TableBlock::side_by_side(double width) const {
  return column_size(first).x() + 2 * kTableGap + column_size(second).x() <= width;
}

Vec2 TableBlock::size(double width) const {
  const Vec2 a = column_size(first), b = column_size(second);
  if (b.y() > 0 && side_by_side(width)) return {a.x() + 2 * kTableGap + b.x(), std::max(a.y(), b.y())};
  return {std::max(a.x(), b.x()), a.y() + b.y()};
}

void add_tables(Drawing& drawing, const TableBlock& block, double width, const Vec2& corner) {
  const Vec2 first = column_size(block.first);
  add_column(drawing, block.first, corner);
  add_column(drawing, block.second,
             corner + (block.side_by_side(width) ? Vec2(first.x() + 2 * kTableGap, 0) : Vec2(0, -first.y())));
}

Table folded(const Table& table, std::size_t rows, std::size_t columns) {
  Table kept{table.columns, table.rows, table.row_height};
  if (kept.rows.size() > rows * columns) {
    const std::size_t left_out = kept.rows.size() - rows * columns + 1;
    kept.rows.resize(rows * columns - 1);
    kept.rows.push_back({std::to_string(left_out) + " more"});
  }
  const std::size_t folds = std::max<std::size_t>(1, (kept.rows.size() + rows - 1) / rows);
  const std::size_t high = (kept.rows.size() + folds - 1) / folds;
  Table out{{}, std::vector<std::vector<std::string>>(high), table.row_height};
  for (std::size_t fold = 0; fold < folds; ++fold) {
    out.columns.insert(out.columns.end(), table.columns.begin(), table.columns.end());
    for (std::size_t r = 0; r < high; ++r) {
      const std::size_t from = fold * high + r;
      std::vector<std::string> cells = from < kept.rows.size() ? kept.rows[from] : std::vector<std::string>{};
      cells.resize(table.columns.size());
      out.rows[r].insert(out.rows[r].end(), cells.begin(), cells.end());
    }
  }
  return out;
}

}  // namespace lamwright::drawing
