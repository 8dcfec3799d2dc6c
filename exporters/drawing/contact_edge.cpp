#include "exporters/drawing/contact_edge.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/former_view.hpp"
#include "exporters/drawing/one_view.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/part_view.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/section_sheet.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

// As wide as the table of bores, so that they stand in one column.
constexpr double kTablesWidth = 186;

Table folded_points(const Table& points) {
  double width = 0;
  for (const Column& column : points.columns) width += column.width;
  const auto columns = static_cast<std::size_t>(kTablesWidth / width);
  return folded(points, std::max<std::size_t>(1, (points.rows.size() + columns - 1) / columns), columns);
}

// Multiples of 50 or, where lines would stand nearer than numbers can, of more.
double station_step(double scale) {
  constexpr double kApart = 4;
  for (const double step : {50.0, 100.0, 200.0})
    if (scale * step >= kApart) return step;
  return 500;
}

// Upright lines through the former at multiples of 50, and under it their X.
void add_stations(const FormerSheet& sheet) {
  const double step = station_step(sheet.view.scale),
               foot = sheet.view.y(sheet.foot.above ? sheet.box.high.y() : sheet.box.low.y());
  const double out = sheet.foot.outward();
  OrdinateRow row{{}, foot + out * 3, foot + out * 8, sheet.field.low.x() + 3, sheet.field.high.x() - 3};
  for (double k = std::ceil(sheet.box.low.x() / step); k * step <= sheet.box.high.x() + kSamePoint; ++k) {
    const double x = k * step;
    row.ordinates.push_back({{sheet.view.x(x), foot + out}, size_text(x), k == 0});
    for (const Span& span : cut_at(sheet.outline, x))
      sheet.drawing.add(k == 0 ? pens::kCentre : pens::kDimension,
                        line(sheet.view.paper({x, span.low}), sheet.view.paper({x, span.high})));
  }
  ordinates(sheet.drawing, row);
}

}  // namespace

std::optional<HeightsFrom> heights_of(const PressPlan& plan, std::size_t index) {
  const Part& part = plan.parts[index];
  const Foot foot = foot_of(plan, part, silhouette(part, {}));
  if (!foot.level() || (!foot.above && std::abs(foot.left.y()) < kSamePoint)) return std::nullopt;
  return HeightsFrom{foot.left.y(), foot.above, foot.above ? "below foot" : "above foot"};
}

std::vector<Table> contact_tables(const PressPlan& plan, std::size_t part) {
  const Profile* contact = former(plan.parts[part].kind()) ? contact_of(plan, part) : nullptr;
  if (!contact || plan.crown) return {};
  const auto edge = segments(*contact);
  return {arc_table(edge), folded_points(point_table(edge, point_step(edge), heights_of(plan, part)))};
}

Drawing contact_edge_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const Part& part = set.plan.parts[index];
  const auto outline = silhouette(part, {});
  const Foot foot = foot_of(set.plan, part, outline);
  const double at_foot = 26, away = 26;
  const OneView content{box_of(outline),
                        {30, 30, foot.above ? away : at_foot, foot.above ? at_foot : away},
                        contact_tables(set.plan, index)};
  OneViewSheet at =
      begun(content, set, title_block(set, sheet, part.name() + ", contact edge", part.stock()));
  const auto loop = at.view.paper(outline);
  at.drawing.add(pens::kFill, Path{loop, true, tints::kBoard});
  at.drawing.add(pens::kCaul, Path{loop, true, {}});
  const Profile* contact = contact_of(set.plan, index);
  for (const Segment& s : segments(*contact)) at.drawing.add(pens::kPart, at.view.paper(s));
  const FormerSheet view{at.drawing, set.plan, part, at.view, at.room, outline, content.model, foot, contact};
  add_stations(view);
  add_run_notes(view);
  return at.drawing;
}

}  // namespace lamwright::drawing
