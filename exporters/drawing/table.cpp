#include "exporters/drawing/table.hpp"

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {
namespace {

void cell_text(Drawing& drawing, const std::string& text, const Box2& cell, Anchor anchor) {
  constexpr double kInset = 1.2;
  if (text.empty()) return;
  Text fit = fitted({0, 0}, text, cell.size().x() - 2 * kInset, {kSmallHeight, kLabelHeight});
  const double middle = (cell.low.x() + cell.high.x()) / 2;
  const double x = anchor == Anchor::left    ? cell.low.x() + kInset
                   : anchor == Anchor::right ? cell.high.x() - kInset
                                             : middle;
  fit.at = {x, (cell.low.y() + cell.high.y() - fit.height) / 2};
  fit.anchor = anchor;
  drawing.add(pens::kText, fit);
}

}  // namespace

Vec2 table_size(const Table& table) {
  double width = 0;
  for (const Column& column : table.columns) width += column.width;
  return {width, table.row_height * static_cast<double>(table.rows.size() + 1)};
}

void add_table(Drawing& drawing, const Table& table, const Vec2& corner) {
  const Vec2 size = table_size(table);
  const Box2 box{{corner.x(), corner.y() - size.y()}, {corner.x() + size.x(), corner.y()}};
  drawing.add(pens::kTable, rectangle(box));
  double x = corner.x();
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const Column& column = table.columns[c];
    if (c > 0) drawing.add(pens::kTable, line({x, box.low.y()}, {x, box.high.y()}));
    for (std::size_t r = 0; r <= table.rows.size(); ++r) {
      const double top = corner.y() - table.row_height * static_cast<double>(r);
      const Box2 cell{{x, top - table.row_height}, {x + column.width, top}};
      if (r == 0)
        cell_text(drawing, column.head, cell, Anchor::middle);
      else if (c < table.rows[r - 1].size())
        cell_text(drawing, table.rows[r - 1][c], cell, column.anchor);
    }
    x += column.width;
  }
  for (std::size_t r = 1; r <= table.rows.size(); ++r) {
    const double y = corner.y() - table.row_height * static_cast<double>(r);
    drawing.add(pens::kTable, line({box.low.x(), y}, {box.high.x(), y}));
  }
}

}  // namespace lamwright::drawing
