#include "exporters/drawing/side_rows.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

struct Row {
  Linear size;
  Span y;
  int row = 0;
};

std::vector<Row> in_rows(const std::vector<Linear>& sizes) {
  std::vector<Row> rows;
  for (const Linear& size : sizes)
    rows.push_back({size, {std::min(size.from.y(), size.to.y()), std::max(size.from.y(), size.to.y())}});
  std::stable_sort(rows.begin(), rows.end(),
                   [](const Row& a, const Row& b) { return a.y.size() < b.y.size() - kSamePoint; });
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (rows[i].y.low < rows[j].y.high - kSamePoint && rows[j].y.low < rows[i].y.high - kSamePoint)
        rows[i].row = std::max(rows[i].row, rows[j].row + 1);
  // The outer ones are drawn first: texts of the inner ones then keep clear of their extension lines.
  std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.row > b.row; });
  return rows;
}

}  // namespace

void SideRows::draw(const SectionSheet& sheet) const {
  for (const bool left : {true, false})
    for (const Row& row : in_rows(left ? left_ : right_)) {
      const double out = kFirstRow + kRow * row.row;
      vertical_dimension(sheet.drawing, row.size,
                         left ? sheet.view_box.low.x() - out : sheet.view_box.high.x() + out);
    }
}

}  // namespace lamwright::drawing
