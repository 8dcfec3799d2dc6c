// A table of runs with sentences: beside it or below it, whichever is lower.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/sheet.hpp"
#include "exporters/drawing/sheet_words.hpp"
#include "exporters/drawing/table.hpp"

namespace lamwright::drawing {

class TableAndWords {
 public:
  // The table's rows are folded, and cut where the paper has no room for all; without rows it is left out.
  TableAndWords(const Table& runs, const std::vector<std::string>& sentences, const Paper& paper);

  bool whole() const { return whole_; }  // all rows are there
  double height() const;                 // mm on paper, with a gap below
  // `corner` is the upper left one.
  void draw(Drawing& drawing, const Vec2& corner) const;

 private:
  double table_height() const;  // with a gap below

  Table table_;
  bool whole_ = true;
  SheetWords words_;
  double words_width_;
  bool beside_ = false;
};

}  // namespace lamwright::drawing
