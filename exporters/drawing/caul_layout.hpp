// Where the map of a caul, its tables and its sentences stand on a sheet.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/caul_view.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table_block.hpp"

namespace lamwright::drawing {

struct CaulContent {
  const PressPlan& plan;
  const PlannedCaul& caul;
  const CaulTexts& texts;     // beside its runs
  Table kinds;                // of runs
  std::vector<Table> supply;  // of the stock and what it covers
  std::vector<std::string> sentences;
};

inline constexpr double kSentenceRow = 4.5;

struct CaulPlaces {
  Choice choice;
  TableBlock tables;
  double tables_width = 0;
  Vec2 tables_at{0, 0};  // upper left, on paper
  std::vector<std::string> lines;
  Vec2 lines_at{0, 0};  // upper left
  View view;
};

// The smallest of the papers on which all can be read at a scale of 1:20 or larger, at the largest such
// scale; where there is none, on the largest paper what can be told beside the map.
CaulPlaces caul_places(const CaulContent& content, const SheetSet& set);

}  // namespace lamwright::drawing
