// A sheet of one view with its tables: below it beside the title block, below it over the title block, or at
// its right.
#pragma once
#include <vector>

#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table.hpp"

namespace lamwright::drawing {

struct OneView {
  Box2 model;
  Margins margins;
  std::vector<Table> tables;  // one under the other
  ScaleRange scales = {};     // see choose()
};

struct OneViewPlaces {
  Choice choice;
  Vec2 view{0, 0};    // lower left of the view's room
  Vec2 tables{0, 0};  // upper left
  bool fits = false;
};

// The first choice in which it fits, see choose().
OneViewPlaces placed(const OneView& content, const SheetSet& set);

struct OneViewSheet {
  Drawing drawing;
  View view;
  Box2 room;  // of the view with its dimensions, on paper
};
// The sheet with its tables; the view is still to be drawn.
OneViewSheet begun(const OneView& content, const SheetSet& set, TitleBlock block);

}  // namespace lamwright::drawing
