#include <algorithm>
#include <cmath>

#include "exporters/drawing/bore_table.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/part_view.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 6;
constexpr double kFirstRow = 9;
constexpr double kRow = 8;

Margins former_margins() { return {40, 40, 34, 26}; }

enum Arrangement { kListBelow, kListRight };

struct FormerSheet {
  Drawing& drawing;
  const Part& part;
  View view;
  Box2 field;
  std::vector<Segment> outline;  // model
  Box2 box;
};

// The contact curve of the station that a former stands at, in its own frame's X and Y; null for a stray
// part.
const Profile* contact_of(const PressPlan& plan, std::size_t part) {
  for (const Body& body : plan.bodies) {
    if (body.part != part || plan.sections.empty()) continue;
    const double z = depth_of(plan, body).middle();
    const auto nearest = std::min_element(
        plan.sections.begin(), plan.sections.end(),
        [&](const Section& a, const Section& b) { return std::abs(a.z - z) < std::abs(b.z - z); });
    const bool upper = plan.parts[part].kind() == PartKind::former_upper && nearest->upper;
    return upper ? &*nearest->upper : &nearest->lower;
  }
  return nullptr;
}

void add_outline(const FormerSheet& sheet) {
  const auto loop = sheet.view.paper(sheet.outline);
  sheet.drawing.add(pens::kFill, Path{loop, true, tints::kBoard});
  sheet.drawing.add(pens::kPart, Path{loop, true, {}});
  add_bores(sheet.drawing, sheet.part, {}, sheet.view, pens::kHidden);
  for (const Mark& mark : sheet.part.marks())
    if (mark.kind != Mark::Kind::centre_line)  // drawn as a centre line of the sheet
      for (const Segment& s : mark.lines) sheet.drawing.add(pens::kMark, sheet.view.paper(s));
}

void add_widths(const FormerSheet& sheet) {
  const double y = sheet.view.y(sheet.box.low.y());
  const Vec2 middle{sheet.view.x(0), y};
  Span foot{INFINITY, -INFINITY};
  for (const Segment& s : sheet.outline)
    for (const Vec2& p : {s.from, s.to})
      if (p.y() < sheet.box.low.y() + kSamePoint)
        foot = {std::min(foot.low, p.x()), std::max(foot.high, p.x())};
  const Vec2 left{sheet.view.x(foot.low), y}, right{sheet.view.x(foot.high), y};
  horizontal_dimension(sheet.drawing, {left, middle, size_text(-foot.low)}, y - kFirstRow);
  horizontal_dimension(sheet.drawing, {middle, right, size_text(foot.high)}, y - kFirstRow);
  double row = y - kFirstRow - kRow;
  if (std::abs(foot.size() - sheet.box.size().x()) > 0.05) {
    horizontal_dimension(sheet.drawing, {left, right, "foot " + size_text(foot.size()), 0.3}, row);
    row -= kRow;
  }
  const auto widest = [&](bool high) {
    Vec2 at = sheet.outline.front().from;
    for (const Segment& s : sheet.outline)
      if (high ? s.from.x() > at.x() + kSamePoint : s.from.x() < at.x() - kSamePoint) at = s.from;
    return sheet.view.paper(at);
  };
  Vec2 low = widest(false), high = widest(true);
  low.x() = sheet.view.x(sheet.box.low.x());
  high.x() = sheet.view.x(sheet.box.high.x());
  horizontal_dimension(sheet.drawing, {low, high, size_text(sheet.box.size().x()), 0.3}, row);
}

void add_heights(const FormerSheet& sheet, const Profile* contact) {
  const double left = sheet.view.x(sheet.box.low.x()), right = sheet.view.x(sheet.box.high.x());
  const double base = sheet.view.y(sheet.box.low.y());
  const Vec2 top{sheet.view.x(highest(sheet.outline).x()), sheet.view.y(sheet.box.high.y())};
  double outer = left - kFirstRow;
  if (contact) {
    const Vec2 a = sheet.view.paper(contact->start().point), b = sheet.view.paper(contact->end().point);
    vertical_dimension(sheet.drawing,
                       {{left, base}, a, size_text(contact->start().point.y() - sheet.box.low.y())},
                       left - kFirstRow);
    vertical_dimension(sheet.drawing,
                       {{right, base}, b, size_text(contact->end().point.y() - sheet.box.low.y())},
                       right + kFirstRow);
    outer -= kRow;
  }
  vertical_dimension(sheet.drawing, {{left, base}, top, size_text(sheet.box.size().y())}, outer);
}

void add_centre_line(const FormerSheet& sheet) {
  const double x = sheet.view.x(0);
  sheet.drawing.add(pens::kCentre, line({x, sheet.view.y(sheet.box.low.y()) - 2},
                                        {x, sheet.view.y(sheet.box.high.y()) + 8}));
  sheet.drawing.add(pens::kText,
                    Text{{x, sheet.view.y(sheet.box.high.y()) + 10}, "X = 0", kSmallHeight, Anchor::middle});
}

void add_run_notes(const FormerSheet& sheet, const Profile* contact) {
  if (!contact) return;
  for (const Segment& s : segments(*contact)) {
    const double share = s.straight() ? 0.5 : 0.35;
    const Vec2 outward = left_of(s.tangent(share));
    const std::string text = s.straight() ? "straight " + number(s.length(), 2) : "R" + number(s.radius, 2);
    add_note(sheet.drawing,
             {sheet.view.paper(s.point(share)),
              {text},
              std::atan2(outward.y(), outward.x()),
              8,
              50,
              LeaderEnd::arrow},
             sheet.field);
  }
}

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

FormerPlaces places(const Choice& choice, const Box2& model, const Vec2& table, std::size_t warnings) {
  const Box2 field = drawing_field(choice.paper, warnings);
  const Vec2 room = room_of(model, choice.scale.factor, former_margins()), size = field.size();
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

}  // namespace

Drawing former_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const Part& part = set.plan.parts[index];
  const auto outline = silhouette(part, {});
  const Box2 box = box_of(outline);
  const Table table = former_table(part);
  const Choice choice = choose(papers_from(set.paper), 2, [&](const Choice& c) {
    return places(c, box, table_size(table), set.warnings.size()).fits;
  });
  const FormerPlaces at = places(choice, box, table_size(table), set.warnings.size());
  const auto count = counted(static_cast<long>(instances(set.plan, index)), "piece");
  TitleBlock block = title_block(set, sheet, part.name(), part.stock() + ", " + count);
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_table(drawing, table, at.table);
  const Box2 room = room_at(at.view, room_of(box, choice.scale.factor, former_margins()));
  const FormerSheet view{drawing, part,    view_in(box, choice.scale.factor, former_margins(), at.view),
                         room,    outline, box};
  const Profile* contact = contact_of(set.plan, index);
  add_outline(view);
  add_centre_line(view);
  add_widths(view);
  add_heights(view, contact);
  add_run_notes(view, contact);
  add_numbers(view);
  return drawing;
}

}  // namespace lamwright::drawing
