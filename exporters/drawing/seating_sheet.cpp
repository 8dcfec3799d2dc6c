#include <algorithm>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/press_tables.hpp"
#include "exporters/drawing/seating_tables.hpp"
#include "exporters/drawing/seating_view.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 4;  // between blocks of the sheet

TableBlock tables_of(const PressPlan& plan) {
  TableBlock out;
  if (plan.seated->seating.hold() == Hold::held) out.first.push_back(pressure_table(plan));
  if (plan.pull) {
    out.first.push_back(pull_table(plan));
    out.second.push_back(folded_runs(plan));
  }
  return out;
}

struct SeatingPlaces {
  Vec2 origin{0, 0};  // of the view
  Vec2 tables{0, 0};
  double tables_width = 0;
  double strip = 0;  // height that tables and title block take
  bool fits = false;
};

SeatingPlaces places(const PressPlan& plan, const TableBlock& tables, const Choice& choice,
                     std::size_t warnings) {
  const Box2 field = drawing_field(choice.paper, warnings);
  const Margins margins = seating_margins();
  const double width = field.size().x() - kTitleWidth - 2 * kGap;
  const Vec2 listed = tables.size(width);
  const double strip = std::max(kTitleBlockHeight, listed.y() + kGap) + kGap;
  const Box2 box = seating_box(plan, {choice.scale.factor, {0, 0}});
  const Vec2 spare =
      field.size() - box.size() - Vec2(margins.left + margins.right, margins.bottom + margins.top + strip);
  const Vec2 corner = field.low + Vec2(std::max(0.0, spare.x()) / 2 + margins.left,
                                       strip + std::max(0.0, spare.y()) / 2 + margins.bottom);
  return {corner - box.low, field.low + Vec2(kGap, kGap / 2 + listed.y()), width, strip,
          spare.x() >= 0 && spare.y() >= 0 && listed.x() <= width};
}

std::string even_text(const Seated& seated) {
  return "pull " + number(seated.pull, 0) + " N, even pressure " + number(seated.unit, 4) + " MPa";
}

}  // namespace

Drawing seating_sheet(const SheetSet& set, int sheet) {
  const PressPlan& plan = set.plan;
  const TableBlock tables = tables_of(plan);
  const auto at = [&](const Choice& choice) { return places(plan, tables, choice, set.warnings.size()); };
  const Choice choice = choose(papers_from(set.paper), 1, [&](const Choice& c) { return at(c).fits; });
  const SeatingPlaces place = at(choice);
  TitleBlock block = title_block(set, sheet, "pressure along the curve", even_text(*plan.seated));
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_tables(drawing, tables, place.tables_width, place.tables);
  Box2 field = grown(drawing_field(choice.paper, set.warnings.size()), -kGap / 2);
  field.low.y() += place.strip;
  add_seating(drawing, plan, {choice.scale.factor, place.origin}, field);
  return drawing;
}

}  // namespace lamwright::drawing
