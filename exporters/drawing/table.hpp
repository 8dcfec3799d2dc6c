// A ruled table on a sheet.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

struct Column {
  std::string head;
  double width = 0;
  Anchor anchor = Anchor::middle;
};

struct Table {
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
  double row_height = 5;
};

// With its head; mm on paper.
Vec2 table_size(const Table& table);
// `corner` is the upper left one. Texts too long for their cell are written smaller, then shortened.
void add_table(Drawing& drawing, const Table& table, const Vec2& corner);

}  // namespace lamwright::drawing
