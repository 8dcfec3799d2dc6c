#include "exporters/drawing/profile_frame.hpp"

#include <algorithm>
#include <iterator>

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kStrip = kTitleBlockHeight + kFrameGap;
constexpr double kShownWell = 50;  // least size of the curve on paper
constexpr double kSmall = 100;     // what is smaller at full size is enlarged
constexpr double kLegendRow = 4.6;
constexpr double kUnderTable = 0.5;

// ISO 5455, largest first.
std::vector<Scale> scales_for(const Box2& model) {
  std::vector<Scale> out;
  if (model.size().maxCoeff() < kSmall)
    for (const int times : {50, 20, 10, 5, 2}) out.push_back({double(times), std::to_string(times) + ":1"});
  std::copy_if(scales().begin(), scales().end(), std::back_inserter(out),
               [](const Scale& scale) { return scale.factor <= 1; });
  for (const int times : {200, 500, 1000, 2000, 5000})
    out.push_back({1.0 / times, "1:" + std::to_string(times)});
  return out;
}

Box2 field_over(const Paper& paper, double blocks) {
  Box2 field = drawing_field(paper);
  field.low += Vec2(kFrameGap, kStrip + blocks);
  field.high -= Vec2(kFrameGap, kFrameGap);
  return field;
}

struct Tried {
  FramePlaces places;
  bool fits = false;
  double shown = 0;  // size of the curve on paper
};

Tried tried(const FrameContent& content, const Paper& paper, const Scale& scale, double blocks) {
  const Box2 field = field_over(paper, blocks);
  const Margins margins = content.margins(scale.factor);
  const Vec2 room = room_of(content.model, scale.factor, margins), spare = field.size() - room;
  const Vec2 corner = field.low + spare.cwiseMax(Vec2(0, 0)) / 2;
  return {{paper, scale, view_in(content.model, scale.factor, margins, corner), field},
          spare.x() >= 0 && spare.y() >= 0,
          scale.factor * content.model.size().maxCoeff()};
}

Tried largest(const FrameContent& content, const Paper& paper, double blocks) {
  const auto all = scales_for(content.model);
  for (const Scale& scale : all)
    if (const Tried at = tried(content, paper, scale, blocks); at.fits) return at;
  return tried(content, paper, all.back(), blocks);
}

}  // namespace

double block_width(const Paper& paper) { return drawing_field(paper).size().x() - 2 * kFrameGap; }

Vec2 block_corner(const FramePlaces& places) { return places.field.low; }

FramePlaces placed(const FrameContent& content, const std::string& paper) {
  const auto all = papers_from(paper);
  Tried best;
  for (const Paper& p : all) {
    const auto blocks = content.blocks(p);
    if (!blocks && p.name != all.back().name) continue;
    const Tried at = largest(content, p, blocks.value_or(0));
    if (at.fits && at.shown >= kShownWell) return at.places;
    if (best.shown == 0 || (at.fits && at.shown > best.shown)) best = at;
  }
  return best.places;
}

double above_title(const Figures& figures) {
  constexpr double kBelow = 2;
  double height = kLegendRow * double(figures.legend.size()) + kBelow;
  for (const Table& table : figures.tables) height += table_size(table).y() + kUnderTable;
  return std::max(0.0, height - kTitleBlockHeight);
}

void add_figures(Drawing& drawing, const Paper& paper, const Figures& figures) {
  constexpr double kSample = 10;
  const Box2 field = drawing_field(paper);
  const double x = field.low.x() + kFrameGap, right = title_box(paper).low.x() - 1;
  double y = field.low.y() + kTitleBlockHeight + above_title(figures);
  for (const Table& table : figures.tables) {
    add_table(drawing, table, {x, y});
    y -= table_size(table).y() + kUnderTable;
  }
  for (const LegendRow& row : figures.legend) {
    y -= kLegendRow;
    const Vec2 left{x, y + kSmallHeight / 2}, end = left + Vec2(kSample, 0);
    row.sample(drawing, left, end);
    const Vec2 at{end.x() + 2, y};
    drawing.add(pens::kText, fitted(at, row.text, right - at.x(), {kSmallHeight}));
  }
}

}  // namespace lamwright::drawing
