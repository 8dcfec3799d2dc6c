#include <algorithm>
#include <cmath>

#include "exporters/drawing/bore_table.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/contact_edge.hpp"
#include "exporters/drawing/former_view.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/one_view.hpp"
#include "exporters/drawing/part_view.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

// From a bore as it is drawn.
double away_from(const FormerSheet& sheet, const Bore& bore, const Vec2& point) {
  const Seen seen;
  const Vec2 mouth = sheet.view.paper(seen.point(bore.at)), way = seen.vector(bore.axis);
  if (way.norm() < 0.5) return (point - mouth).norm() - sheet.view.scale * bore.diameter / 2;
  const double along = std::clamp((point - mouth).dot(way), 0.0, sheet.view.scale * bore.length);
  return (point - mouth - along * way).norm();
}

// No reader takes it for another bore's.
bool tells(const FormerSheet& sheet, const Bore& bore, const Vec2& point) {
  constexpr double kNearer = 0.8;
  const double own = away_from(sheet, bore, point);
  return std::all_of(sheet.part.bores().begin(), sheet.part.bores().end(), [&](const Bore& other) {
    const bool same = (other.at - bore.at).norm() < kSamePoint && (other.axis - bore.axis).norm() < kTangent;
    return same || own + kNearer < away_from(sheet, other, point);
  });
}

// Number of the table beside its bore, with a leader where there is no room close by.
void add_number(const FormerSheet& sheet, const Bore& bore, const std::string& number) {
  constexpr double kClose = 5;
  const Seen seen;
  const bool flat = seen.vector(bore.axis).norm() > 0.5;
  const Vec2 mouth = sheet.view.paper(seen.point(bore.at)),
             way = flat ? seen.vector(bore.axis) : direction(kPi / 4);
  const double away = sheet.view.scale * (flat ? bore.length : bore.diameter / 2);
  const auto allowed = [&](const Box2& room) {
    return within(room, sheet.field) && tells(sheet, bore, (room.low + room.high) / 2);
  };
  if (add_inner_text(sheet.drawing, {number, mouth + (away + 3.5) * way, kClose, kSmallHeight}, allowed))
    return;
  // From its middle, sideways: leaders of bores that meet end to end do not cross.
  const Vec2 tip = flat ? Vec2(mouth + away / 2 * way) : mouth;
  const double aside = std::atan2(way.y(), way.x()) - (flat ? kPi / 2 : 0);
  add_note(sheet.drawing, {tip, {number}, aside, 6, 50}, sheet.field);
}

// Bores into an edge come first: their numbers have one place, at the end of the bore.
void add_numbers(const FormerSheet& sheet) {
  const std::vector<Bore> bores = by_station(sheet.part);
  for (const bool across : {false, true})
    for (std::size_t i = 0; i < bores.size(); ++i)
      if ((Projection{}.point(bores[i].axis).norm() < 0.5) == across)
        add_number(sheet, bores[i], std::to_string(i + 1));
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

OneView content_of(const PressPlan& plan, std::size_t index, bool with_edge) {
  const Part& part = plan.parts[index];
  const auto outline = silhouette(part, {});
  OneView content{box_of(outline), former_margins(foot_of(plan, part, outline)), {}};
  const Profile* contact = contact_of(plan, index);
  if (plan.crown && contact) content.tables.push_back(crown_table(*contact));
  if (with_edge)
    for (Table& table : contact_tables(plan, index)) content.tables.push_back(std::move(table));
  if (!part.bores().empty()) content.tables.push_back(former_table(part));
  return content;
}

}  // namespace

bool contact_edge_apart(const SheetSet& set, std::size_t part) {
  if (contact_tables(set.plan, part).empty()) return false;
  const OneViewPlaces with = placed(content_of(set.plan, part, true), set),
                      without = placed(content_of(set.plan, part, false), set);
  return !with.fits || with.choice.scale.factor < without.choice.scale.factor ||
         with.choice.paper.width > without.choice.paper.width;
}

Drawing former_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const Part& part = set.plan.parts[index];
  const auto outline = silhouette(part, {});
  const auto count = counted(static_cast<long>(instances(set.plan, index)), "piece");
  const bool apart = contact_edge_apart(set, index);
  const std::string next = apart ? ", edge on next sheet" : "";
  OneViewSheet at = begun(content_of(set.plan, index, !apart), set,
                          title_block(set, sheet, part.name(), part.stock() + ", " + count + next));
  const FormerSheet view{at.drawing,
                         set.plan,
                         part,
                         at.view,
                         at.room,
                         outline,
                         box_of(outline),
                         foot_of(set.plan, part, outline),
                         contact_of(set.plan, index)};
  add_former_outline(view);
  add_former_dimensions(view);
  add_numbers(view);
  return at.drawing;
}

}  // namespace lamwright::drawing
