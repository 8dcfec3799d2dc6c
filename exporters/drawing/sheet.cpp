#include "exporters/drawing/sheet.hpp"

#include <algorithm>
#include <cctype>

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kLeftBorder = 20;
constexpr double kBorder = 10;

Box2 frame_box(const Paper& paper) {
  return {{kLeftBorder, kBorder}, {paper.width - kBorder, paper.height - kBorder}};
}

// From 5 inside the paper's edge to the frame.
void centring_marks(Drawing& sheet, const Box2& frame, const Paper& paper) {
  constexpr double kFromEdge = 5;
  const Vec2 middle{paper.width / 2, paper.height / 2};
  sheet.add(pens::kFrame, line({middle.x(), kFromEdge}, {middle.x(), frame.low.y()}));
  sheet.add(pens::kFrame, line({middle.x(), frame.high.y()}, {middle.x(), paper.height - kFromEdge}));
  sheet.add(pens::kFrame, line({kFromEdge, middle.y()}, {frame.low.x(), middle.y()}));
  sheet.add(pens::kFrame, line({frame.high.x(), middle.y()}, {paper.width - kFromEdge, middle.y()}));
}

// First-angle symbol (ISO 5456-2): a truncated cone, its narrow end on the left, and beside it the view from
// there.
void first_angle_symbol(Drawing& sheet, const Vec2& middle) {
  constexpr double kLarge = 2.4, kSmall = 1.2, kLength = 4.8;
  const Vec2 cone = middle - Vec2(4.5, 0), rings = middle + Vec2(3.5, 0);
  const double half = kLength / 2;
  sheet.add(pens::kTable, polygon({cone + Vec2(-half, -kSmall), cone + Vec2(half, -kLarge),
                                   cone + Vec2(half, kLarge), cone + Vec2(-half, kSmall)}));
  sheet.add(pens::kTable, Circle{rings, kLarge, {}});
  sheet.add(pens::kTable, Circle{rings, kSmall, {}});
  sheet.add(pens::kCentre, line(cone - Vec2(half + 1.2, 0), cone + Vec2(half + 1.2, 0)));
  sheet.add(pens::kCentre, line(rings - Vec2(kLarge + 1, 0), rings + Vec2(kLarge + 1, 0)));
  sheet.add(pens::kCentre, line(rings - Vec2(0, kLarge + 1), rings + Vec2(0, kLarge + 1)));
}

struct Cell {
  Box2 box;
  std::string label;
  std::string value;
};

void draw_cell(Drawing& sheet, const Cell& cell) {
  // Descenders of the label stay clear of the value's accents.
  constexpr double kInset = 1.5, kAbove = 0.8, kBelow = 1.4;
  const Vec2 size = cell.box.size();
  sheet.add(
      pens::kText,
      Text{{cell.box.low.x() + kInset, cell.box.high.y() - kAbove - kLabelHeight}, cell.label, kLabelHeight});
  sheet.add(pens::kText, fitted(cell.box.low + Vec2(kInset, kBelow), cell.value, size.x() - 2 * kInset,
                                {kTextHeight, kSmallHeight}));
}

void title_block(Drawing& sheet, const Box2& box, const TitleBlock& block) {
  constexpr double kWide = 104, kNarrow = 38;
  const double x[] = {box.low.x(), box.low.x() + kWide, box.low.x() + kWide + kNarrow, box.high.x()};
  const double y[] = {box.low.y(), box.low.y() + kTitleRow, box.low.y() + 2 * kTitleRow, box.high.y()};
  const auto cell = [&](int column, int row) {
    return Box2{{x[column], y[row]}, {x[column + 1], y[row + 1]}};
  };
  const std::string sheets = std::to_string(block.sheet) + " / " + std::to_string(block.sheets);
  draw_cell(sheet, {cell(0, 2), "title", block.title});
  draw_cell(sheet, {cell(0, 1), "drawing", block.drawing});
  draw_cell(sheet, {cell(0, 0), "detail", block.detail});
  draw_cell(sheet, {cell(1, 2), "job number", block.number});
  draw_cell(sheet, {cell(1, 1), "scale", block.scale});
  draw_cell(sheet, {cell(1, 0), "dimensions", "mm"});
  draw_cell(sheet, {cell(2, 2), "date", block.date});
  draw_cell(sheet, {cell(2, 1), "sheet", sheets});
  draw_cell(sheet, {cell(2, 0), "projection", ""});
  first_angle_symbol(sheet, {(x[2] + x[3]) / 2 + 5, y[0] + kTitleRow / 2});
  for (const int i : {1, 2}) {
    sheet.add(pens::kTable, line({x[0], y[i]}, {x[3], y[i]}));
    sheet.add(pens::kTable, line({x[i], y[0]}, {x[i], y[3]}));
  }
  sheet.add(pens::kPart, line({x[0], y[0]}, {x[0], y[3]}));
  sheet.add(pens::kPart, line({x[0], y[3]}, {x[3], y[3]}));
}

void warning_rows(Drawing& sheet, const Box2& frame, const std::vector<std::string>& warnings) {
  double y = frame.high.y();
  for (const std::string& text : warnings) {
    y -= kWarningRow;
    sheet.add(pens::kWarning,
              fitted({frame.low.x() + 3, y}, text, frame.size().x() - 6, {kTextHeight, kSmallHeight}));
  }
}

}  // namespace

const std::vector<Paper>& papers() {
  static const std::vector<Paper> kPapers{{"A4", 297, 210}, {"A3", 420, 297}, {"A2", 594, 420}};
  return kPapers;
}

std::vector<Paper> papers_from(const std::string& name) {
  std::string upper = name;
  for (char& c : upper) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  auto from = std::find_if(papers().begin(), papers().end(), [&](const Paper& p) { return p.name == upper; });
  if (from == papers().end()) from = papers().begin() + 1;
  return {from, papers().end()};
}

Box2 drawing_field(const Paper& paper, std::size_t warnings) {
  Box2 field = frame_box(paper);
  field.high.y() -= kWarningRow * static_cast<double>(warnings);
  return field;
}

Box2 title_box(const Paper& paper) {
  const Box2 frame = frame_box(paper);
  const Vec2 low{frame.high.x() - kTitleWidth, frame.low.y()};
  return {low, {frame.high.x(), low.y() + kTitleBlockHeight}};
}

Drawing new_sheet(const Paper& paper, const TitleBlock& block, const std::vector<std::string>& warnings) {
  Drawing sheet(block.title + ": " + block.drawing, {paper.width, paper.height}, sheet_pens());
  const Box2 frame = frame_box(paper);
  sheet.add(pens::kFrame, rectangle(frame));
  centring_marks(sheet, frame, paper);
  title_block(sheet, title_box(paper), block);
  warning_rows(sheet, frame, warnings);
  return sheet;
}

}  // namespace lamwright::drawing
