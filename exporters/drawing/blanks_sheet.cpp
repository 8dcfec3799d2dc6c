#include <algorithm>
#include <cmath>

#include "exporters/drawing/blank_figures.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/one_view.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/section_sheet.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

// Room of one figure round its sheet.
constexpr Margins kCell{22, 20, 16, 16};
constexpr double kCoarsest = 1.0 / 20;  // rectangles are told by their figures

Vec2 cell_margins() { return {kCell.left + kCell.right, kCell.bottom + kCell.top}; }

// Figures in a grid of equal cells, row by row from above.
struct Grid {
  std::vector<BlankFigure> figures;
  std::size_t columns = 1;

  std::size_t rows() const { return (figures.size() + columns - 1) / columns; }
  Vec2 largest() const {
    Vec2 size{0, 0};
    for (const BlankFigure& figure : figures) size = size.cwiseMax(Vec2(figure.length, figure.width));
    return size;
  }
  Vec2 cell(double scale) const { return scale * largest() + cell_margins(); }
  OneView content(const std::vector<Table>& tables) const {
    const Vec2 times{static_cast<double>(columns), static_cast<double>(rows())};
    const Vec2 room = cell_margins().cwiseProduct(times);
    return {{{0, 0}, largest().cwiseProduct(times)}, {0, room.x(), 0, room.y()}, tables, {kCoarsest}};
  }
  // Lower left of the figure's own sheet, on paper.
  Vec2 corner(std::size_t i, double scale, const Vec2& room) const {
    const double column = static_cast<double>(i % columns),
                 up = static_cast<double>(rows() - 1 - i / columns);
    return room + cell(scale).cwiseProduct(Vec2(column, up)) + Vec2(kCell.left, kCell.bottom);
  }
};

// The number of columns that allows the largest scale, on the smallest paper.
Grid best_grid(const std::vector<BlankFigure>& figures, const std::vector<Table>& tables,
               const SheetSet& set) {
  Grid best{figures, 1};
  OneViewPlaces so_far = placed(best.content(tables), set);
  for (std::size_t columns = 2; columns <= figures.size(); ++columns) {
    const Grid grid{figures, columns};
    const OneViewPlaces at = placed(grid.content(tables), set);
    const bool larger = at.choice.scale.factor > so_far.choice.scale.factor,
               smaller = at.choice.scale.factor < so_far.choice.scale.factor;
    const bool less_paper = !smaller && at.choice.paper.width < so_far.choice.paper.width;
    if (!at.fits || (so_far.fits && !larger && !less_paper)) continue;
    best = grid;
    so_far = at;
  }
  return best;
}

void add_name(Drawing& drawing, const BlankFigure& figure, const Box2& box) {
  const std::string thickness = number(figure.thickness, 2);
  // Boards and sheets without a row are named with their thickness.
  const bool named = figure.material.ends_with("-" + thickness) || figure.material.ends_with(" " + thickness);
  const std::string stock = figure.material.empty() ? thickness + " thick"
                            : named                 ? figure.material
                                                    : figure.material + " " + thickness;
  const std::string material = stock + (figure.grain ? ", grain " + grain_text(*figure.grain) : "");
  const double width = box.size().x() + kCell.left + kCell.right - 4;
  const auto add = [&](double above, const std::string& text) {
    Text line = fitted({0, 0}, text, width, {kSmallHeight, kLabelHeight});
    line.at = {(box.low.x() + box.high.x()) / 2, box.high.y() + above};
    line.anchor = Anchor::middle;
    drawing.add(pens::kText, line);
  };
  add(8.5, figure.name + ", " + counted(figure.count, "piece"));
  add(4.5, material);
}

// A line with an arrow at each end, beside the middle.
void add_grain(Drawing& drawing, const BlankFigure& figure, const Box2& box) {
  if (!figure.grain) return;
  const Vec2 size = box.size(), way = direction(*figure.grain);
  const double half = std::min(12.0, 0.25 * std::min(size.x(), size.y()));
  const Vec2 middle = box.low + Vec2(0.27 * size.x(), 0.5 * size.y());
  drawing.add(pens::kDimension, line(middle - half * way, middle + half * way));
  arrow(drawing, middle + half * way, way);
  arrow(drawing, middle - half * way, -way);
}

void add_pins(Drawing& drawing, const std::vector<FlatPin>& pins, const BlankFigure& figure, const Box2& box,
              double scale) {
  constexpr double kArm = 1.5;
  const double middle = (box.low.x() + box.high.x()) / 2;
  if (!figure.pinned) return;
  for (const FlatPin& pin : pins) {
    const Vec2 at{middle + scale * pin.from_middle, box.low.y() + scale * pin.from_edge};
    drawing.add(pens::kMark, line(at - Vec2(kArm, 0), at + Vec2(kArm, 0)));
    drawing.add(pens::kMark, line(at - Vec2(0, kArm), at + Vec2(0, kArm)));
  }
}

void add_trim(Drawing& drawing, const BlankFigure& figure, const Box2& box, double scale, const Box2& cell) {
  if (figure.trim <= 0) return;
  const Vec2 in = scale * Vec2(figure.trim, figure.trim);
  const Box2 kept{box.low + in, box.high - in};
  drawing.add(pens::kOpen, rectangle(kept));
  const Vec2 tip{kept.high.x(), kept.low.y() + 0.3 * kept.size().y()};
  add_note(drawing, {tip, {"trim " + size_text(figure.trim)}, kPi, 6, 40, LeaderEnd::arrow}, cell);
}

void add_figure(Drawing& drawing, const BlankFigure& figure, const std::vector<FlatPin>& pins,
                const Vec2& corner, double scale) {
  const Box2 box{corner, corner + scale * Vec2(figure.length, figure.width)};
  const Box2 cell{box.low - Vec2(kCell.left, kCell.bottom), box.high + Vec2(kCell.right, kCell.top)};
  const double middle = (box.low.x() + box.high.x()) / 2;
  drawing.add(pens::kFill, rectangle(box, figure.ply ? tints::kBlank : tints::kSlat));
  drawing.add(pens::kPart, rectangle(box));
  drawing.add(pens::kCentre, line({middle, box.low.y() - 2}, {middle, box.high.y() + 2}));
  add_name(drawing, figure, box);
  add_grain(drawing, figure, box);
  add_pins(drawing, pins, figure, box, scale);
  horizontal_dimension(drawing, {box.low, {box.high.x(), box.low.y()}, size_text(figure.length), 0.3},
                       box.low.y() - kFirstRow);
  vertical_dimension(drawing, {box.low, {box.low.x(), box.high.y()}, size_text(figure.width)},
                     box.low.x() - kFirstRow);
  add_trim(drawing, figure, box, scale, cell);
}

std::vector<Table> tables_of(const PressPlan& plan, const std::vector<PackSheet>& pack) {
  constexpr std::size_t kRows = 26, kColumns = 1;
  std::vector<Table> out{folded(pack_table(pack), kRows, kColumns)};
  if (!plan.pins.empty()) out.push_back(pin_table(flat_pins(plan)));
  return out;
}

}  // namespace

Drawing blanks_sheet(const SheetSet& set, int sheet) {
  const PressPlan& plan = set.plan;
  const std::vector<Table> tables = tables_of(plan, set.pack);
  const Grid grid = best_grid(blank_figures(plan, set.pack), tables, set);
  const std::string detail = "lay-up of " + std::to_string(plan.panel.plies.size()) + ", " +
                             counted(plan.panel.count, "panel") + "; girth left to right";
  OneViewSheet at = begun(grid.content(tables), set, title_block(set, sheet, "blanks", detail));
  const std::vector<FlatPin> pins = flat_pins(plan);
  for (std::size_t i = 0; i < grid.figures.size(); ++i)
    add_figure(at.drawing, grid.figures[i], pins, grid.corner(i, at.view.scale, at.room.low), at.view.scale);
  return at.drawing;
}

}  // namespace lamwright::drawing
