#include "exporters/drawing/caul_layout.hpp"

#include <algorithm>

#include "exporters/drawing/text.hpp"
#include "exporters/drawing/wrapped.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 3.5;
constexpr double kCoarsest = 1.0 / 20;

// Tables beside the title block and sentences over both; both in a column over the title block, at the right
// of the map; tables over the title block and sentences beside it; tables at the right of the map and
// sentences beside the title block; both at the right of the map, all over the title block.
enum Arrangement { kBesideTitle, kColumn, kOverTitle, kRight, kAllOverTitle, kArrangements };

// Upper left corners and the room for the map, from the field's lower left corner.
struct Rooms {
  TableBlock tables;
  double tables_width = 0;
  Vec2 tables_at{0, 0};
  std::vector<std::string> lines;
  Vec2 lines_at{0, 0};
  Box2 map;

  double tables_bottom() const { return tables_at.y() - tables.size(tables_width).y(); }
};

std::vector<std::string> lines_of(const CaulContent& content, double width) {
  std::vector<std::string> out;
  for (const std::string& sentence : content.sentences)
    for (std::string& line : wrapped(sentence, width, kSmallHeight)) out.push_back(std::move(line));
  return out;
}

double height_of(const std::vector<std::string>& lines) { return kSentenceRow * double(lines.size()); }

Rooms beside_title(const CaulContent& content, const Vec2& field) {
  Rooms out;
  out.tables = {{content.kinds}, content.supply};
  out.tables_width = field.x() - kTitleWidth - 2 * kGap;
  const double listed = out.tables.size(out.tables_width).y() + kGap / 2;
  out.tables_at = {kGap, listed};
  out.lines = lines_of(content, field.x() - 2 * kGap);
  out.lines_at = {kGap, std::max(kTitleBlockHeight, listed) + kGap + height_of(out.lines)};
  out.map = {{0, out.lines_at.y() + kGap}, field};
  return out;
}

Rooms in_column(const CaulContent& content, const Vec2& field) {
  Rooms out;
  out.tables = {{content.kinds}, content.supply};
  out.tables_width = kTitleWidth - kGap;
  const double left = field.x() - kTitleWidth;
  out.tables_at = {left, field.y() - kGap};
  out.lines = lines_of(content, out.tables_width);
  out.lines_at = {left, kTitleBlockHeight + kGap + height_of(out.lines)};
  out.map = {{0, 0}, {left - kGap, field.y()}};
  return out;
}

Rooms over_title(const CaulContent& content, const Vec2& field) {
  Rooms out;
  out.tables = {{content.kinds}, content.supply};
  out.tables_width = field.x() - 2 * kGap;
  out.lines = lines_of(content, field.x() - kTitleWidth - 2 * kGap);
  out.lines_at = {kGap, height_of(out.lines) + kGap / 2};
  const double strip = std::max(kTitleBlockHeight, out.lines_at.y()) + kGap;
  out.tables_at = {kGap, strip + out.tables.size(out.tables_width).y()};
  out.map = {{0, out.tables_at.y() + kGap}, field};
  return out;
}

Rooms at_right(const CaulContent& content, const Vec2& field) {
  Rooms out;
  out.tables.first = content.supply;
  out.tables.first.insert(out.tables.first.begin(), content.kinds);
  const Vec2 listed = out.tables.size(field.x());
  out.tables_width = listed.x();
  out.tables_at = {field.x() - kGap - listed.x(), field.y() - kGap};
  out.lines = lines_of(content, field.x() - kTitleWidth - 2 * kGap);
  out.lines_at = {kGap, height_of(out.lines) + kGap / 2};
  out.map = {{0, std::max(kTitleBlockHeight, out.lines_at.y()) + kGap},
             {out.tables_at.x() - kGap, field.y()}};
  return out;
}

Rooms all_over_title(const CaulContent& content, const Vec2& field) {
  Rooms out = at_right(content, field);
  out.lines = lines_of(content, out.tables_width);
  out.lines_at = {out.tables_at.x(), kTitleBlockHeight + kGap + height_of(out.lines)};
  out.map.low = {0, kTitleBlockHeight + kGap};
  return out;
}

Rooms rooms(const CaulContent& content, int arrangement, const Vec2& field) {
  if (arrangement == kBesideTitle) return beside_title(content, field);
  if (arrangement == kColumn) return in_column(content, field);
  if (arrangement == kOverTitle) return over_title(content, field);
  if (arrangement == kRight) return at_right(content, field);
  return all_over_title(content, field);
}

// Nothing lies on anything else, nor outside the field.
bool fits(const Rooms& rooms, int arrangement, const Vec2& map, const Vec2& field) {
  const Vec2 spare = rooms.map.size() - map;
  const bool over_lines = arrangement == kColumn || arrangement == kAllOverTitle;
  const double under = over_lines ? rooms.lines_at.y() : kTitleBlockHeight;
  const bool beside_map = over_lines || arrangement == kRight;
  return spare.x() >= 0 && spare.y() >= 0 &&
         rooms.tables.size(rooms.tables_width).x() <= rooms.tables_width &&
         std::max(rooms.tables_at.y(), rooms.lines_at.y()) <= field.y() &&
         (!beside_map || rooms.tables_bottom() >= under + kGap);
}

struct Trial {
  CaulPlaces places;
  bool fits = false, legible = false;
};

Trial tried(const CaulContent& content, const Choice& choice, std::size_t warnings) {
  const Box2 field = drawing_field(choice.paper, warnings), box = caul_box(content.caul);
  const double scale = choice.scale.factor;
  const CaulMap map = caul_map(content.plan, content.caul, content.texts, scale);
  const Vec2 needed = room_of(box, scale, map.margins);
  const Rooms at = rooms(content, choice.arrangement, field.size());
  const Vec2 spare = (at.map.size() - needed).cwiseMax(Vec2(0, 0));
  CaulPlaces places{choice,
                    at.tables,
                    at.tables_width,
                    field.low + at.tables_at,
                    at.lines,
                    field.low + at.lines_at,
                    view_in(box, scale, map.margins, field.low + at.map.low + spare / 2)};
  return {std::move(places), fits(at, choice.arrangement, needed, field.size()), map.legible};
}

}  // namespace

CaulPlaces caul_places(const CaulContent& content, const SheetSet& set) {
  const auto at = [&](const Choice& choice) { return tried(content, choice, set.warnings.size()); };
  const auto legible = [&](const Choice& choice) {
    const Trial trial = at(choice);
    return trial.fits && trial.legible;
  };
  const Choice best = choose(papers_from(set.paper), kArrangements, legible, {kCoarsest});
  if (legible(best)) return at(best).places;
  return at(choose({papers().back()}, kArrangements, [&](const Choice& c) { return at(c).fits; })).places;
}

}  // namespace lamwright::drawing
