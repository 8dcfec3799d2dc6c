#include "exporters/drawing/pressure_sheet.hpp"

#include <algorithm>

#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/pressure_graphs.hpp"
#include "exporters/drawing/pressure_key.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 3.5;   // between blocks of the sheet
constexpr double kKeyGap = 6;  // between the curve along the width and the key

Margins map_margins() {
  return {kStationsLeft, kSpreadGap + kSpreadWidth, kStationsBelow, kAboveMap + kMeanHeight + kMeanTitle};
}

struct PressurePlaces {
  Vec2 corner{0, 0};  // lower left of the map's room
  Vec2 key{0, 0};     // upper left
  Vec2 table{0, 0};   // upper left
  bool fits = false;
};

PressurePlaces places(const Box2& face, const Vec2& key, const Vec2& table, const Choice& choice,
                      std::size_t warnings) {
  const Box2 field = drawing_field(choice.paper, warnings);
  const Vec2 room = room_of(face, choice.scale.factor, map_margins());
  const double strip = std::max(kTitleBlockHeight, table.y() + kGap / 2) + kGap;
  const Vec2 used{room.x() + kKeyGap + key.x(), std::max(room.y(), key.y())};
  const Vec2 spare = field.size() - used - Vec2(2 * kGap, strip + kGap);
  const Vec2 corner =
      field.low + Vec2(kGap + std::max(0.0, spare.x()) / 2, strip + std::max(0.0, spare.y()) / 2);
  const Vec2 top = corner + Vec2(0, used.y());
  return {top - Vec2(0, room.y()), top + Vec2(room.x() + kKeyGap, 0),
          field.low + Vec2(kGap, kGap / 2 + table.y()),
          spare.x() >= 0 && spare.y() >= 0 && table.x() + 2 * kGap <= field.size().x() - kTitleWidth};
}

}  // namespace

Table map_table(const PressPlan& plan, const PressureMap& map, const Glue& glue) {
  Table table{{{"finished panel", 32, Anchor::left}, {"MPa", 18}, {"girth", 15}, {"width", 15}}, {}, 5};
  const auto row = [&](const char* name, double pressure, const Vec2& at) {
    table.rows.push_back({name, pressure_text(pressure), size_text(at.x()), size_text(at.y())});
  };
  row("least", map.sound_least, {map.least_girth, map.least_width});
  row("greatest", map.sound_greatest, greatest_place(plan, map));
  table.rows.push_back({"mean, blank", pressure_text(map.mean), "-", "-"});
  const std::string range = glue_range(glue);
  table.rows.push_back({"wanted by glue", range.substr(0, range.rfind(' ')), "-", "-"});
  return table;
}

Drawing pressure_sheet(const SheetSet& set, int sheet, const PressureMap& map, const Glue& glue) {
  const PressPlan& plan = set.plan;
  const PressureSteps steps(map.greatest);
  const PressureKey key(plan, glue, steps);
  const Table table = map_table(plan, map, glue);
  const Box2 face{{0, 0}, {map.girth.back(), plan.panel.blank_width()}};
  const auto at = [&](const Choice& choice) {
    return places(face, key.size(), table_size(table), choice, set.warnings.size());
  };
  const Choice choice = choose(papers_from(set.paper), 1, [&](const Choice& c) { return at(c).fits; });
  const PressurePlaces place = at(choice);
  TitleBlock block = title_block(set, sheet, "pressure on the outer face, laid flat",
                                 "girth from the left, width from the near edge");
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_table(drawing, table, place.table);
  const PressureView view{plan, map, view_in(face, choice.scale.factor, map_margins(), place.corner), steps};
  add_pressure_bands(drawing, view);
  add_pressure_stations(drawing, view);
  add_mean_curve(drawing, view);
  add_spread_curve(drawing, view);
  add_extremes(drawing, view);
  key.add(drawing, place.key);
  return drawing;
}

}  // namespace lamwright::drawing
