#include "exporters/pdf/template_guide.hpp"

#include <algorithm>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/sheet.hpp"
#include "exporters/drawing/table.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/tile_notes.hpp"

namespace lamwright {
namespace {

using namespace drawing;

constexpr double kStep = 5.5;       // from line to line
constexpr double kBarColumn = 125;  // beside the table

const std::vector<std::string>& steps() {
  static const std::vector<std::string> kSteps{
      "1. Print all pages at 100 % (\"actual size\"). Switch off \"fit to page\" and every other scaling.",
      "2. Measure both bars of every page: 100 mm across and 100 mm up. Print again where one is off by 0.3 "
      "or more.",
      "3. Where a sheet follows at the right or below, cut this sheet along its dashed line.",
      "4. Lay the cut edge on the dashed line of that sheet, so that the crosses complete each other, and "
      "tape it.",
      "5. Measure the whole template: it must have the size given in the table.",
      "6. Stick it on the board and saw on the waste side of the outline; prick the centres of bores "
      "through."};
  return kSteps;
}

std::vector<Pen> guide_pens() {
  std::vector<Pen> pens{{pens::kText, 0.25, {}, "#000000"}, {pens::kTable, 0.25, {}, "#000000"}};
  const std::vector<Pen> own = tile_pens();
  pens.insert(pens.end(), own.begin(), own.end());
  return pens;
}

Box2 field_of(const Vec2& page) {
  const Vec2 margin{kTileMargin, kTileMargin};
  return {margin, page - margin};
}

// Writes the line and steps down.
void add_line(Drawing& page, Vec2& at, const Text& text) {
  at.y() -= text.height;
  page.add(pens::kText, Text{at, text.text, text.height});
  at.y() -= kStep - kTextHeight;
}

// The larger height in which every step fits.
double step_height(double width) {
  const bool fits = std::all_of(steps().begin(), steps().end(), [&](const std::string& step) {
    return text_width(step, kTextHeight) <= width;
  });
  return fits ? kTextHeight : kSmallHeight;
}

// Heading and steps; what is left under them.
Box2 add_words(Drawing& page, const GuideSpec& spec) {
  Box2 field = field_of(page.size());
  const double width = field.size().x();
  Vec2 at{field.low.x(), field.high.y()};
  add_line(
      page, at,
      fitted({}, "Templates at full size: " + spec.job, width, {kTitleHeight, kTextHeight, kSmallHeight}));
  if (!spec.date.empty()) add_line(page, at, fitted({}, spec.date, width, {kSmallHeight}));
  at.y() -= 2;
  for (const std::string& step : steps()) add_line(page, at, fitted({}, step, width, {step_height(width)}));
  field.high.y() = at.y() - 2;
  return field;
}

Table contents(double width) {
  constexpr double kSize = 34, kPieces = 16, kSheets = 26, kPages = 18;
  const double rest = width - kSize - kPieces - kSheets - kPages;
  Table table;
  table.columns = {{"part", rest, Anchor::left},
                   {"size, mm", kSize, Anchor::middle},
                   {"pieces", kPieces, Anchor::middle},
                   {"sheets", kSheets, Anchor::middle},
                   {"pages", kPages, Anchor::middle}};
  return table;
}

std::string pages_text(int first, int count) {
  return std::to_string(first) + (count > 1 ? "-" + std::to_string(first + count - 1) : "");
}

std::size_t rows_a_page(const Vec2& page, const GuideSpec& spec) {
  Drawing scrap("", page, guide_pens());
  const double room = add_words(scrap, spec).size().y() - table_size(contents(page.x())).y();
  return static_cast<std::size_t>(std::max(1.0, room / contents(page.x()).row_height));
}

}  // namespace

std::vector<Drawing> template_guide(const GuideSpec& spec, const std::vector<GuideRow>& rows) {
  const Paper paper = papers_from(spec.paper).front();
  const Vec2 size{paper.width, paper.height};
  const std::size_t each = rows_a_page(size, spec),
                    pages = std::max<std::size_t>(1, (rows.size() + each - 1) / each);
  std::vector<Drawing> out;
  int first = static_cast<int>(pages) + 1;
  for (std::size_t page = 0; page < pages; ++page) {
    out.emplace_back("how to use the templates", size, guide_pens());
    Box2 field = add_words(out.back(), spec);
    Table table = contents(field.size().x() - kBarColumn);
    for (std::size_t i = page * each; i < std::min(rows.size(), (page + 1) * each); ++i) {
      const GuideRow& row = rows[i];
      table.rows.push_back({row.part, row.size, row.pieces, row.sheets, pages_text(first, row.pages)});
      first += row.pages;
    }
    add_table(out.back(), table, {field.low.x() + kBarColumn, field.high.y()});
    field.high.x() = field.low.x() + kBarColumn;
    add_check_bars(out.back(), field);
  }
  return out;
}

}  // namespace lamwright
