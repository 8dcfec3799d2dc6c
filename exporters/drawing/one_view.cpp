#include "exporters/drawing/one_view.hpp"

#include <algorithm>

#include "exporters/drawing/table_block.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 6;
enum Arrangement { kBesideTitle, kRight, kOverTitle, kArrangements };

Vec2 size_of(const std::vector<Table>& tables) {
  Vec2 size{0, tables.empty() ? 0 : kTableGap * static_cast<double>(tables.size() - 1)};
  for (const Table& table : tables)
    size = {std::max(size.x(), table_size(table).x()), size.y() + table_size(table).y()};
  return size;
}

Vec2 positive(const Vec2& v) { return v.cwiseMax(Vec2(0, 0)); }

// The view over a strip along the bottom.
OneViewPlaces over_strip(const Choice& choice, const Box2& field, const Vec2& room, double strip,
                         double tables_top) {
  const Vec2 spare = field.size() - room - Vec2(0, strip);
  return {choice, field.low + Vec2(0, strip) + positive(spare) / 2, field.low + Vec2(kGap, tables_top),
          spare.x() >= 0 && spare.y() >= 0};
}

OneViewPlaces beside_title(const Choice& choice, const Box2& field, const Vec2& room, const Vec2& table) {
  const double strip = std::max(table.y() + kGap, kTitleBlockHeight) + kGap;
  OneViewPlaces out = over_strip(choice, field, room, strip, kGap + table.y());
  out.fits = out.fits && table.x() + kTitleWidth + 2 * kGap <= field.size().x();
  return out;
}

OneViewPlaces over_title(const Choice& choice, const Box2& field, const Vec2& room, const Vec2& table) {
  const double top = kTitleBlockHeight + kGap + table.y();
  OneViewPlaces out = over_strip(choice, field, room, top + kGap, top);
  out.fits = out.fits && table.x() + 2 * kGap <= field.size().x();
  return out;
}

OneViewPlaces at_right(const Choice& choice, const Box2& field, const Vec2& room, const Vec2& table) {
  const Vec2 size = field.size(), spare = size - room - Vec2(table.x() + 2 * kGap, 0);
  const bool above_title = table.y() + kTitleBlockHeight + 2 * kGap <= size.y();
  const bool clear_of_title =
      room.x() + kTitleWidth <= size.x() || room.y() + kTitleBlockHeight + kGap <= size.y();
  return {choice, field.low + Vec2(std::max(0.0, spare.x()) / 2, size.y() - room.y()),
          field.high - Vec2(table.x() + kGap, kGap),
          spare.x() >= 0 && spare.y() >= 0 && above_title && clear_of_title};
}

OneViewPlaces places(const OneView& content, const Choice& choice, std::size_t warnings) {
  const Box2 field = drawing_field(choice.paper, warnings);
  const Vec2 room = room_of(content.model, choice.scale.factor, content.margins);
  const Vec2 table = size_of(content.tables);
  if (choice.arrangement == kBesideTitle) return beside_title(choice, field, room, table);
  if (choice.arrangement == kRight) return at_right(choice, field, room, table);
  return over_title(choice, field, room, table);
}

}  // namespace

OneViewPlaces placed(const OneView& content, const SheetSet& set) {
  const auto at = [&](const Choice& choice) { return places(content, choice, set.warnings.size()); };
  return at(choose(
      papers_from(set.paper), kArrangements, [&](const Choice& choice) { return at(choice).fits; },
      content.scales));
}

OneViewSheet begun(const OneView& content, const SheetSet& set, TitleBlock block) {
  const OneViewPlaces at = placed(content, set);
  block.scale = at.choice.scale.text;
  OneViewSheet out{new_sheet(at.choice.paper, block, set.warnings), {}, {}};
  if (!content.tables.empty())
    add_tables(out.drawing, {content.tables, {}}, size_of(content.tables).x(), at.tables);
  const double scale = at.choice.scale.factor;
  out.view = view_in(content.model, scale, content.margins, at.view);
  out.room = room_at(at.view, room_of(content.model, scale, content.margins));
  return out;
}

}  // namespace lamwright::drawing
