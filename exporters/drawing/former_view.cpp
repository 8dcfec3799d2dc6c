#include "exporters/drawing/former_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/section_sheet.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

// Where the foot crosses X = 0.
Vec2 middle_of(const Foot& foot) {
  const double share = -foot.left.x() / (foot.right.x() - foot.left.x());
  return {0, foot.left.y() + share * (foot.right.y() - foot.left.y())};
}

Vec2 widest(const FormerSheet& sheet, bool high) {
  Vec2 at = sheet.outline.front().from;
  for (const Segment& s : sheet.outline)
    if (high ? s.from.x() > at.x() + kSamePoint : s.from.x() < at.x() - kSamePoint) at = s.from;
  return sheet.view.paper({high ? sheet.box.high.x() : sheet.box.low.x(), at.y()});
}

void add_level_widths(const FormerSheet& sheet) {
  const double out = sheet.foot.outward(), y = sheet.view.y(sheet.foot.left.y());
  const Vec2 middle{sheet.view.x(0), y}, left = sheet.view.paper(sheet.foot.left),
                                         right = sheet.view.paper(sheet.foot.right);
  const double first = y + out * kFirstRow;
  horizontal_dimension(sheet.drawing, {left, middle, size_text(-sheet.foot.left.x())}, first);
  horizontal_dimension(sheet.drawing, {middle, right, size_text(sheet.foot.right.x())}, first);
  double row = first + out * kRow;
  const double foot = sheet.foot.right.x() - sheet.foot.left.x();
  if (std::abs(foot - sheet.box.size().x()) > 0.05) {
    horizontal_dimension(sheet.drawing, {left, right, "foot " + size_text(foot), 0.3}, row);
    row += out * kRow;
  }
  horizontal_dimension(
      sheet.drawing, {widest(sheet, false), widest(sheet, true), size_text(sheet.box.size().x()), 0.3}, row);
}

// Along a leaning foot; the width over all lies level beyond. From the outside in, so that texts keep clear
// of the extension lines.
void add_leaning_widths(const FormerSheet& sheet) {
  constexpr double kBeyond = kFirstRow + kRow + 9;
  const double out = sheet.foot.outward();
  const Vec2 middle = sheet.view.paper(middle_of(sheet.foot)), left = sheet.view.paper(sheet.foot.left),
             right = sheet.view.paper(sheet.foot.right);
  const auto along = [&](const Vec2& a, const Vec2& b, const std::string& name, double away) {
    const std::string text = name + size_text((b - a).norm() / sheet.view.scale);
    aligned_dimension(sheet.drawing, {a, b, text}, out * away);
  };
  const double edge = sheet.view.y(sheet.foot.above ? sheet.box.high.y() : sheet.box.low.y());
  horizontal_dimension(sheet.drawing,
                       {widest(sheet, false), widest(sheet, true), size_text(sheet.box.size().x()), 0.3},
                       edge + out * kBeyond);
  along(left, right, "foot ", kFirstRow + kRow);
  along(left, middle, "", kFirstRow);
  along(middle, right, "", kFirstRow);
  const double end = sheet.foot.above ? 0.12 : 0.88;
  add_note(sheet.drawing,
           {left + end * (right - left),
            {"foot leans " + angle_text(std::abs(sheet.foot.lean()))},
            -out * kPi / 2,
            10,
            60,
            LeaderEnd::arrow},
           sheet.field);
}

void add_one_mould_heights(const FormerSheet& sheet) {
  const double left = sheet.view.x(sheet.box.low.x()), right = sheet.view.x(sheet.box.high.x());
  const double base = sheet.view.y(sheet.box.low.y());
  const Vec2 top{sheet.view.x(highest(sheet.outline).x()), sheet.view.y(sheet.box.high.y())};
  double outer = left - kFirstRow;
  if (sheet.contact) {
    const Vec2 start = sheet.contact->start().point, end = sheet.contact->end().point;
    vertical_dimension(sheet.drawing,
                       {{left, base}, sheet.view.paper(start), size_text(start.y() - sheet.box.low.y())},
                       left - kFirstRow);
    vertical_dimension(sheet.drawing,
                       {{right, base}, sheet.view.paper(end), size_text(end.y() - sheet.box.low.y())},
                       right + kFirstRow);
    outer -= kRow;
  }
  vertical_dimension(sheet.drawing, {{left, base}, top, size_text(sheet.box.size().y())}, outer);
}

// Over all, from the foot where it is level.
void add_over_all(const FormerSheet& sheet, double x) {
  const Vec2 top = sheet.view.paper(highest(sheet.outline)), bottom = sheet.view.paper(lowest(sheet.outline));
  const Vec2 corner = sheet.view.paper(sheet.foot.left);
  const bool level = sheet.foot.level();
  const Vec2 from = level && !sheet.foot.above ? corner : bottom,
             to = level && sheet.foot.above ? corner : top;
  vertical_dimension(sheet.drawing, {from, to, size_text(sheet.box.size().y())}, x);
}

// From the foot's corners to the ends of the contact edge; over all unless one of these says it.
void add_mould_heights(const FormerSheet& sheet) {
  const double left = sheet.view.x(sheet.box.low.x()) - kFirstRow,
               right = sheet.view.x(sheet.box.high.x()) + kFirstRow;
  if (!sheet.contact) return add_over_all(sheet, left);
  const Vec2 start = sheet.contact->start().point, end = sheet.contact->end().point;
  const double at_left = std::abs(start.y() - sheet.foot.left.y()),
               at_right = std::abs(end.y() - sheet.foot.right.y()), all = sheet.box.size().y();
  if (std::abs(at_left - all) > 0.05 && std::abs(at_right - all) > 0.05) add_over_all(sheet, left - kRow);
  const auto side = [&](const Vec2& foot, const Vec2& tip, double height, double x) {
    vertical_dimension(sheet.drawing, {sheet.view.paper(foot), sheet.view.paper(tip), size_text(height)}, x);
  };
  side(sheet.foot.left, start, at_left, left);
  side(sheet.foot.right, end, at_right, right);
}

// The figure stands on the side away from the foot.
void add_centre_line(const FormerSheet& sheet) {
  const double x = sheet.view.x(0), low = sheet.view.y(sheet.box.low.y()),
               high = sheet.view.y(sheet.box.high.y());
  if (sheet.foot.above) {
    sheet.drawing.add(pens::kCentre, line({x, low - 8}, {x, high + 2}));
    sheet.drawing.add(pens::kText, Text{{x, low - 10 - kSmallHeight}, "X = 0", kSmallHeight, Anchor::middle});
  } else {
    sheet.drawing.add(pens::kCentre, line({x, low - 2}, {x, high + 8}));
    sheet.drawing.add(pens::kText, Text{{x, high + 10}, "X = 0", kSmallHeight, Anchor::middle});
  }
}

// So flat a crown has a table instead of radii.
void add_crown_note(const FormerSheet& sheet) {
  const Vec2 tip = sheet.view.paper(sheet.contact->point(0.3 * sheet.contact->girth()));
  add_note(sheet.drawing,
           {tip,
            {"crowned by " + number(sheet.plan.crown->height, 2)},
            -sheet.foot.outward() * kPi / 2,
            8,
            50,
            LeaderEnd::arrow},
           sheet.field);
}

}  // namespace

Margins former_margins(const Foot& foot) {
  const double at_foot = foot.level() ? 34 : 46, away = 26;
  return {40, 40, foot.above ? away : at_foot, foot.above ? at_foot : away};
}

void add_former_outline(const FormerSheet& sheet) {
  const auto loop = sheet.view.paper(sheet.outline);
  sheet.drawing.add(pens::kFill, Path{loop, true, tints::kBoard});
  sheet.drawing.add(pens::kPart, Path{loop, true, {}});
  add_bores(sheet.drawing, sheet.part, {}, sheet.view, pens::kHidden);
  for (const Mark& mark : sheet.part.marks())
    if (mark.kind != Mark::Kind::centre_line)  // drawn as a centre line of the sheet
      for (const Segment& s : mark.lines) sheet.drawing.add(pens::kMark, sheet.view.paper(s));
}

void add_run_notes(const FormerSheet& sheet) {
  if (!sheet.contact) return;
  for (const Segment& s : segments(*sheet.contact)) {
    const double share = s.straight() ? 0.5 : 0.35;
    const Vec2 outward = -sheet.foot.outward() * left_of(s.tangent(share));
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

void add_former_dimensions(const FormerSheet& sheet) {
  add_centre_line(sheet);
  if (two_moulds(sheet.plan)) add_mould_heights(sheet);
  if (sheet.foot.level())
    add_level_widths(sheet);
  else
    add_leaning_widths(sheet);
  if (!two_moulds(sheet.plan)) add_one_mould_heights(sheet);
  if (sheet.plan.crown && sheet.contact)
    add_crown_note(sheet);
  else
    add_run_notes(sheet);
}

}  // namespace lamwright::drawing
