// The sheets of a profile without a press have one frame: the view, under it blocks over the whole width,
// under these figures and a legend beside the title block.
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/sheet.hpp"
#include "exporters/drawing/table.hpp"

namespace lamwright::drawing {

inline constexpr double kFrameGap = 4;  // inside the frame and between blocks

struct FrameContent {
  Box2 model;                                    // what the view shows
  std::function<Margins(double scale)> margins;  // round it
  // Height of the blocks between view and title block, mm on paper; nothing where the paper is too small for
  // them.
  std::function<std::optional<double>(const Paper&)> blocks;
};

struct FramePlaces {
  Paper paper;
  Scale scale;
  View view;
  Box2 field;  // for the view, its dimensions and notes
};

// Width that blocks have.
double block_width(const Paper& paper);
// Upper left corner of the blocks.
Vec2 block_corner(const FramePlaces& places);

// The first of the papers from the named one on that shows the view well, at its largest scale; small things
// are enlarged. The largest view there is when none shows it well.
FramePlaces placed(const FrameContent& content, const std::string& paper);

// A line of the legend: what is drawn in the sample's box, then the text.
struct LegendRow {
  std::function<void(Drawing&, const Vec2& left, const Vec2& right)> sample;
  std::string text;
};
// Tables one under the other, under them the legend.
struct Figures {
  std::vector<Table> tables;
  std::vector<LegendRow> legend;
};
// How far they reach above the title block that they stand beside, mm on paper: blocks have to keep clear.
double above_title(const Figures& figures);
void add_figures(Drawing& drawing, const Paper& paper, const Figures& figures);

}  // namespace lamwright::drawing
