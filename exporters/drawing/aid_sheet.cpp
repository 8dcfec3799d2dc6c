#include <algorithm>
#include <cmath>

#include "exporters/drawing/curved_edge.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/one_view.hpp"
#include "exporters/drawing/part_view.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/section_sheet.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kTablesWidth = 186;
constexpr Margins kMargins{40, 34, 30, 30};

std::vector<Segment> working_edge(const ShopAid& aid) {
  return curved_edge(aid.part.outline(),
                     aid.use == ShopAid::Use::check_outer ? EdgeSide::lower : EdgeSide::upper);
}

bool cradle(const ShopAid& aid) { return aid.use == ShopAid::Use::trim_cradle; }

// Bends to one side only, outward.
bool crown(const std::vector<Segment>& edge) {
  return std::all_of(edge.begin(), edge.end(), [](const Segment& s) { return s.turn <= 0; });
}

Table use_table(const ShopAid& aid) {
  Table table{{{"use", kTablesWidth, Anchor::left}}, {}, 5};
  const auto say = [&](const char* text) { table.rows.push_back({text}); };
  if (cradle(aid)) {
    say("Lay the released blank on the curved edges, inner face down, centre line on centre line.");
    say("Clamp it and saw both ends along the saw lines, square to the face.");
    return table;
  }
  const bool outer = aid.use == ShopAid::Use::check_outer;
  say(outer ? "Hold the lower edge against the outer face of the trimmed panel, centre line on centre line."
            : "Hold the upper edge against the inner face of the trimmed panel, centre line on centre line.");
  if (!crown(working_edge(aid)))
    say("A gap shows where the panel has come out otherwise than reckoned.");
  else if (outer)
    say("A gap in the middle: the panel has opened more than reckoned; gaps at the ends: less.");
  else
    say("A gap in the middle: the panel has opened less than reckoned; gaps at the ends: more.");
  return table;
}

struct SawLine {
  Vec2 face{0, 0};  // on the working edge
  Vec2 tip{0, 0};
  double lean = 0;  // from the upright, radians
};

std::vector<SawLine> saw_lines(const Part& part) {
  std::vector<SawLine> out;
  for (const Mark& mark : part.marks()) {
    if (mark.kind != Mark::Kind::saw_line || mark.lines.empty()) continue;
    const Segment& s = mark.lines.front();
    const Vec2 up = s.from.y() > s.to.y() ? Vec2(s.from - s.to) : Vec2(s.to - s.from);
    out.push_back({s.from, s.to, std::atan2(up.x(), up.y())});
  }
  return out;
}

Table saw_table(const std::vector<SawLine>& lines) {
  Table table{{{"saw line", 26, Anchor::left},
               {"from X", 24},
               {"from Y", 24},
               {"to X", 24},
               {"to Y", 24},
               {"from the upright", 40}},
              {},
              5};
  for (const SawLine& line : lines) {
    const char* sense = std::abs(line.lean) < kTangent ? "" : line.lean > 0 ? " right" : " left";
    table.rows.push_back({line.face.x() < 0 ? "left" : "right", number(line.face.x(), 2),
                          number(line.face.y(), 2), number(line.tip.x(), 2), number(line.tip.y(), 2),
                          angle_text(std::abs(line.lean)) + sense});
  }
  return table;
}

Table folded_points(const Table& points) {
  double width = 0;
  for (const Column& column : points.columns) width += column.width;
  const auto columns = static_cast<std::size_t>(kTablesWidth / width);
  return folded(points, std::max<std::size_t>(1, (points.rows.size() + columns - 1) / columns), columns);
}

std::vector<Table> tables_of(const ShopAid& aid) {
  const auto edge = working_edge(aid);
  std::optional<HeightsFrom> base;  // Y of a template is that over the ends of the face
  if (cradle(aid)) base = HeightsFrom{aid.part.outline().box().low.y(), false, "above base"};
  std::vector<Table> out;
  if (const auto lines = saw_lines(aid.part); !lines.empty()) out.push_back(saw_table(lines));
  if (!edge.empty()) {
    out.push_back(arc_table(edge));
    out.push_back(folded_points(point_table(edge, point_step(edge), base)));
  }
  out.push_back(use_table(aid));
  return out;
}

void add_marks(const OneViewSheet& sheet, Drawing& drawing, const Part& part) {
  for (const Mark& mark : part.marks()) {
    const char* pen = mark.kind == Mark::Kind::centre_line ? pens::kCentre
                      : mark.kind == Mark::Kind::saw_line  ? pens::kStrap
                                                           : pens::kMark;
    for (const Segment& s : mark.lines) drawing.add(pen, sheet.view.paper(s));
  }
}

// Of a cradle, from its base to the ends of the working edge.
void add_side_heights(Drawing& drawing, const OneViewSheet& sheet, const ShopAid& aid, const Box2& box) {
  const auto edge = working_edge(aid);
  if (!cradle(aid) || edge.empty()) return;
  const auto side = [&](const Vec2& end, double base, double away) {
    const double height = end.y() - box.low.y();
    if (height < 1) return;
    const Linear size{sheet.view.paper({base, box.low.y()}), sheet.view.paper(end), size_text(height)};
    vertical_dimension(drawing, size, sheet.view.x(base) + away);
  };
  side(edge.front().from, box.low.x(), -kFirstRow);
  side(edge.back().to, box.high.x(), kFirstRow);
}

void add_sizes(Drawing& drawing, const OneViewSheet& sheet, const ShopAid& aid, const Box2& box) {
  add_side_heights(drawing, sheet, aid, box);
  const View& view = sheet.view;
  const Box2 at = view.paper(box);
  horizontal_dimension(drawing, {at.low, {at.high.x(), at.low.y()}, size_text(box.size().x()), 0.3},
                       at.low.y() - kFirstRow - kRow);
  vertical_dimension(drawing, {at.low, {at.low.x(), at.high.y()}, size_text(box.size().y())},
                     at.low.x() - kFirstRow - kRow);
  drawing.add(pens::kText, Text{{view.x(0), at.high.y() + 4}, "X = 0", kSmallHeight, Anchor::middle});
}

// Ends of a template: from the face into the wood, square to it.
std::vector<Segment> template_ends(const Part& part, const std::vector<Segment>& edge) {
  std::vector<Segment> out;
  for (const Vec2& corner : {edge.front().from, edge.back().to})
    for (const Segment& s : part.outline().segments()) {
      const bool begins = (s.from - corner).norm() < kSamePoint, ends = (s.to - corner).norm() < kSamePoint;
      const Vec2 along = corner == edge.front().from ? edge.front().tangent(0) : edge.back().tangent(1);
      const Segment inward = begins ? s : s.reversed();
      constexpr double kSquare = 1e-3;
      if (s.straight() && begins != ends && std::abs(inward.tangent(0).dot(along)) < kSquare)
        out.push_back(inward);
    }
  return out;
}

// Beside the end where there is room, else as a note.
void add_depth(Drawing& drawing, const OneViewSheet& sheet, const ShopAid& aid) {
  const auto edge = working_edge(aid);
  if (cradle(aid) || edge.empty()) return;
  const Vec2 middle = (edge.front().from + edge.back().to) / 2;
  const auto ends = template_ends(aid.part, edge);
  for (const Segment& end : ends) {
    const double side = cross(end.tangent(0), middle - end.from) < 0 ? 1 : -1;  // away from the piece
    const Linear size{sheet.view.paper(end.from), sheet.view.paper(end.to), size_text(end.length())};
    if (!aligned_dimension_fits(drawing, size, side * kFirstRow)) continue;
    return aligned_dimension(drawing, size, side * kFirstRow);
  }
  if (ends.empty()) return;
  const Vec2 tip = sheet.view.paper(ends.front().point(0.5));
  add_note(drawing, {tip, {size_text(ends.front().length()) + " deep"}, kPi, 8, 60, LeaderEnd::arrow},
           sheet.room);
}

void add_saw_notes(Drawing& drawing, const OneViewSheet& sheet, const Part& part) {
  for (const SawLine& line : saw_lines(part)) {
    const std::string text = "saw line, " + angle_text(std::abs(line.lean)) + " from the upright";
    add_note(drawing,
             {sheet.view.paper(Vec2(0.3 * line.face + 0.7 * line.tip)),
              {text},
              line.face.x() < 0 ? 0 : kPi,
              8,
              60,
              LeaderEnd::arrow},
             sheet.room);
  }
}

// Away from the wood.
void add_run_notes(Drawing& drawing, const OneViewSheet& sheet, const ShopAid& aid) {
  const double side = aid.use == ShopAid::Use::check_outer ? -1 : 1;
  for (const Segment& s : working_edge(aid)) {
    const double share = s.straight() ? 0.5 : 0.35;
    const Vec2 out = side * left_of(s.tangent(share));
    const std::string text = s.straight() ? "straight " + number(s.length(), 2) : "R" + number(s.radius, 2);
    add_note(
        drawing,
        {sheet.view.paper(s.point(share)), {text}, std::atan2(out.y(), out.x()), 8, 50, LeaderEnd::arrow},
        sheet.room);
  }
}

}  // namespace

Drawing aid_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const ShopAid& aid = set.plan.aids[index];
  const auto outline = silhouette(aid.part, {});
  OneViewSheet at =
      begun({box_of(outline), kMargins, tables_of(aid)}, set,
            title_block(set, sheet, aid.part.name(), aid.part.stock() + ", " + counted(aid.count, "piece")));
  const auto loop = at.view.paper(outline);
  at.drawing.add(pens::kFill, Path{loop, true, tints::kBoard});
  at.drawing.add(pens::kCaul, Path{loop, true, {}});
  for (const Segment& s : working_edge(aid)) at.drawing.add(pens::kPart, at.view.paper(s));
  add_marks(at, at.drawing, aid.part);
  add_sizes(at.drawing, at, aid, box_of(outline));
  add_depth(at.drawing, at, aid);
  add_run_notes(at.drawing, at, aid);
  add_saw_notes(at.drawing, at, aid.part);
  return at.drawing;
}

}  // namespace lamwright::drawing
