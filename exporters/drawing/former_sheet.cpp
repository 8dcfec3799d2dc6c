#include <algorithm>
#include <cmath>

#include "exporters/drawing/bore_table.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/former_view.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/part_view.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 6;
enum Arrangement { kListBelow, kListRight };

// Number of the table beside its bore, with a leader where there is no room close by.
void add_number(const FormerSheet& sheet, const Bore& bore, const std::string& number) {
  constexpr double kClose = 5;
  const Seen seen;
  const bool flat = seen.vector(bore.axis).norm() > 0.5;
  const Vec2 mouth = sheet.view.paper(seen.point(bore.at)),
             way = flat ? seen.vector(bore.axis) : direction(kPi / 4);
  const double away = sheet.view.scale * (flat ? bore.length : bore.diameter / 2);
  const auto allowed = [&](const Box2& room) { return within(room, sheet.field); };
  if (add_inner_text(sheet.drawing, {number, mouth + (away + 3.5) * way, kClose, kSmallHeight}, allowed))
    return;
  const Vec2 tip = flat ? Vec2(mouth + away * way) : mouth;
  add_note(sheet.drawing, {tip, {number}, std::atan2(way.y(), way.x()), 6, 50}, sheet.field);
}

// Bores into an edge come first: their numbers have one place, at the end of the bore.
void add_numbers(const FormerSheet& sheet) {
  const std::vector<Bore> bores = by_station(sheet.part);
  for (const bool across : {false, true})
    for (std::size_t i = 0; i < bores.size(); ++i)
      if ((Projection{}.point(bores[i].axis).norm() < 0.5) == across)
        add_number(sheet, bores[i], std::to_string(i + 1));
}

struct FormerPlaces {
  Vec2 view{0, 0};   // lower left of the view's room
  Vec2 table{0, 0};  // upper left
  bool fits = false;
};

FormerPlaces places(const Choice& choice, const Box2& model, const Margins& margins, const Vec2& table,
                    std::size_t warnings) {
  const Box2 field = drawing_field(choice.paper, warnings);
  const Vec2 room = room_of(model, choice.scale.factor, margins), size = field.size();
  if (choice.arrangement == kListBelow) {
    const double strip = std::max(table.y() + kGap, kTitleBlockHeight) + kGap;
    const Vec2 spare = size - room - Vec2(0, strip);
    return {field.low + Vec2(std::max(0.0, spare.x()) / 2, strip + std::max(0.0, spare.y()) / 2),
            field.low + Vec2(kGap, kGap + table.y()),
            spare.x() >= 0 && spare.y() >= 0 && table.x() + kTitleWidth + 2 * kGap <= size.x()};
  }
  const Vec2 spare = size - room - Vec2(table.x() + 2 * kGap, 0);
  const bool above_title = table.y() + kTitleBlockHeight + 2 * kGap <= size.y();
  const bool beside_title =
      room.x() + kTitleWidth <= size.x() || room.y() + kTitleBlockHeight + kGap <= size.y();
  return {field.low + Vec2(std::max(0.0, spare.x()) / 2, size.y() - room.y()),
          field.high - Vec2(table.x() + kGap, kGap),
          spare.x() >= 0 && spare.y() >= 0 && above_title && beside_title};
}

// Drop of a crowned contact edge from its middle, at equal steps along X; it is the same on both sides.
Table crown_table(const Profile& contact) {
  constexpr int kSteps = 6;
  const double girth = contact.girth(), middle = girth / 2;
  Table table{{{"beside X = 0", 36, Anchor::left}}, {{"drop"}}, 5};
  for (int i = 0; i <= kSteps; ++i) {
    const Vec2 at = contact.point(middle + middle * i / kSteps);
    table.columns.push_back({size_text(at.x()), 20.5});
    table.rows[0].push_back(number(std::abs(at.y() - contact.point(middle).y()), 2));
  }
  return table;
}

// The bores, and over them the crown of a former that has one.
std::vector<Table> tables_of(const SheetSet& set, const Part& part, const Profile* contact) {
  std::vector<Table> out;
  if (set.plan.crown && contact) out.push_back(crown_table(*contact));
  out.push_back(former_table(part));
  return out;
}

Vec2 size_of(const std::vector<Table>& tables) {
  Vec2 size{0, kTableGap * static_cast<double>(tables.size() - 1)};
  for (const Table& table : tables)
    size = {std::max(size.x(), table_size(table).x()), size.y() + table_size(table).y()};
  return size;
}

}  // namespace

Drawing former_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const Part& part = set.plan.parts[index];
  const auto outline = silhouette(part, {});
  const Box2 box = box_of(outline);
  const Foot foot = foot_of(set.plan, part, outline);
  const Margins margins = former_margins(foot);
  const Profile* contact = contact_of(set.plan, index);
  const std::vector<Table> tables = tables_of(set, part, contact);
  const auto at = [&](const Choice& c) {
    return places(c, box, margins, size_of(tables), set.warnings.size());
  };
  const Choice choice = choose(papers_from(set.paper), 2, [&](const Choice& c) { return at(c).fits; });
  const FormerPlaces place = at(choice);
  const auto count = counted(static_cast<long>(instances(set.plan, index)), "piece");
  TitleBlock block = title_block(set, sheet, part.name(), part.stock() + ", " + count);
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_tables(drawing, {tables, {}}, size_of(tables).x(), place.table);
  const double scale = choice.scale.factor;
  const Box2 room = room_at(place.view, room_of(box, scale, margins));
  const FormerSheet view{drawing, set.plan, part,   view_in(box, scale, margins, place.view), room, outline,
                         box,     foot,     contact};
  add_former_outline(view);
  add_former_dimensions(view);
  add_numbers(view);
  return drawing;
}

}  // namespace lamwright::drawing
