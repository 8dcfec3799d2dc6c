#include "exporters/drawing/mould_dimensions.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/mould_notes.hpp"
#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/open_view.hpp"
#include "exporters/drawing/pull_view.hpp"
#include "exporters/drawing/side_rows.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

bool leans(const SectionSheet& sheet) { return std::abs(lean(sheet.plan, sheet.z)) > kTangent; }

bool on(const std::vector<Segment>& outline, const Vec2& p) {
  return std::any_of(outline.begin(), outline.end(),
                     [&](const Segment& s) { return distance(s, p) < kSamePoint; });
}

// The dimension with its text where that is free, looked for in small steps; nothing where it is not.
std::optional<Linear> fitting(const SectionSheet& sheet, Linear size, double offset) {
  for (int step = 0; step < 3; ++step, size.share += 0.01)  // thirds of the steps it is moved in
    if (aligned_dimension_fits(sheet.drawing, size, offset)) return size;
  return std::nullopt;
}

double top_of(const SectionSheet& sheet) {
  return std::max(sheet.view_box.high.y(), sheet.view.paper(open_box(sheet.plan, sheet.z)).high.y());
}

// Past everything else, for what has no room in the view.
double highest_row(const SectionSheet& sheet) { return top_of(sheet) + 2 * kRow; }
double lowest_row(const SectionSheet& sheet) { return sheet.view_box.low.y() - kFirstRow - 2 * kRow - 2; }

// Inside the former between its sides, as near to its foot as they and the text allow, or past the view.
void add_former_width(const SectionSheet& sheet, Group half) {
  constexpr double kFromFoot = 7, kStep = 3;
  const Body* former = former_at(sheet.plan, sheet.z, half);
  if (!former) return;
  const auto outline = outline_of(sheet.plan, *former);
  const Sides sides = sides_of(outline, half);
  const double away = half == Group::lower ? 1 : -1;
  const double foot = away * std::max(away * sides.left.y(), away * sides.right.y());
  const std::string text = size_text(sides.right.x() - sides.left.x());
  for (int step = 0; step < 12; ++step) {
    const double y = foot + away * (kFromFoot + kStep * step) / sheet.view.scale;
    const Vec2 left{sides.left.x(), y}, right{sides.right.x(), y};
    if (!on(outline, left) || !on(outline, right)) continue;
    const auto size = fitting(sheet, {sheet.view.paper(left), sheet.view.paper(right), text, 0.25, false}, 0);
    if (size && !beside_parallel(sheet.drawing, line(size->from, size->to)))
      return horizontal_dimension(sheet.drawing, *size, size->from.y());
  }
  const Linear size{sheet.view.paper(sides.left), sheet.view.paper(sides.right), text, 0.25};
  horizontal_dimension(sheet.drawing, size, half == Group::lower ? lowest_row(sheet) : highest_row(sheet));
}

// Over all. Inside the former, beside the point farthest from its foot; outside where that point is at its
// side, the foot leans or there is no room.
void add_former_height(const SectionSheet& sheet, Group half, SideRows& rows) {
  constexpr double kBesideTip = 14, kStep = 3;
  const Body* former = former_at(sheet.plan, sheet.z, half);
  if (!former) return;
  const auto outline = outline_of(sheet.plan, *former);
  const Box2 box = box_of(outline);
  const Vec2 top = highest(outline), bottom = lowest(outline), tip = half == Group::lower ? top : bottom;
  const double to_side = std::min(tip.x() - box.low.x(), box.high.x() - tip.x());
  const bool inside = !leans(sheet) && sheet.view.scale * to_side > kBesideTip;
  const Linear size{sheet.view.paper(Vec2(tip.x(), box.low.y())),
                    sheet.view.paper(Vec2(tip.x(), box.high.y())), size_text(box.size().y()), 0.62};
  for (double beside = kBesideTip; inside && beside < 3 * kBesideTip; beside += kStep)
    for (const double offset : {beside, -beside})
      if (const auto fit = fitting(sheet, size, offset))
        return aligned_dimension(sheet.drawing, *fit, offset);
  rows.add(tip.x() < (box.low.x() + box.high.x()) / 2,
           {sheet.view.paper(bottom), sheet.view.paper(top), size.text});
}

// Reach of the loops from X = 0.
void add_reaches(const SectionSheet& sheet, double y) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  if (!closure) return;
  const Vec2 middle{sheet.view.x(0), sheet.view_box.low.y()};
  for (const Vec2& mark : {closure->left.mark, closure->right.mark})
    horizontal_dimension(sheet.drawing, {sheet.view.paper(mark), middle, size_text(std::abs(mark.x()))}, y);
}

void add_beam_length(const SectionSheet& sheet, double below) {
  const Body* beam = beam_at(sheet.plan, sheet.z, Group::lower);
  if (!beam) return;
  const Part& part = sheet.plan.parts[beam->part];
  const Part::Box box = part.box();
  const auto corner = [&](double x) {
    return sheet.view.paper(Projection{}.point(beam->placed.point({x, box.low.y(), 0})));
  };
  aligned_dimension(
      sheet.drawing,
      {corner(box.low.x()), corner(box.high.x()), part.name() + " " + size_text(box.size().x())}, -below);
}

// From foot to foot along the pull at X = 0: beside the view; where beams lean beside that line, if there is
// room.
void add_opening_height(const SectionSheet& sheet, SideRows& rows) {
  const Vec2 low = foot_at(sheet.plan, sheet.z, Group::lower),
             high = foot_at(sheet.plan, sheet.z, Group::upper);
  const Body* beam = beam_at(sheet.plan, sheet.z, Group::lower);
  if (!beam || high.y() <= low.y()) return;
  const double end = box_of(outline_of(sheet.plan, *beam)).high.x();
  rows.add(false, {sheet.view.paper(Vec2(end, low.y())), sheet.view.paper(Vec2(end, high.y())),
                   "between feet " + size_text(high.y() - low.y())});
}

void add_leaning_height(const SectionSheet& sheet) {
  constexpr double kBeside = 12, kStep = 3;
  const Vec2 low = foot_at(sheet.plan, sheet.z, Group::lower),
             high = foot_at(sheet.plan, sheet.z, Group::upper);
  if (high.y() <= low.y()) return;
  const std::string height = size_text(high.y() - low.y());
  Linear size{sheet.view.paper(low), sheet.view.paper(high), {}, 0.6};
  for (const std::string& text : {"between feet " + height, height})
    for (double beside = kBeside; beside < 3 * kBeside; beside += kStep)
      for (const double offset : {-beside, beside}) {
        size.text = text;
        if (const auto fit = fitting(sheet, size, offset))
          return aligned_dimension(sheet.drawing, *fit, offset);
      }
  vertical_dimension(sheet.drawing, size, sheet.view_box.high.x() + kFirstRow + 2 * kRow);
}

// By which the upper beam's end lifts: its left one, or the higher one.
void add_stroke(const SectionSheet& sheet, SideRows& rows) {
  const Body* beam = beam_at(sheet.plan, sheet.z, Group::upper);
  if (!beam || sheet.plan.opening.y() < kSamePoint) return;
  const double side = lean(sheet.plan, sheet.z) > kTangent ? 1 : -1;
  Vec2 end{-side * INFINITY, 0};
  for (const Segment& s : outline_of(sheet.plan, *beam)) {
    const bool same = std::abs(s.from.x() - end.x()) < kSamePoint;
    if (same ? s.from.y() > end.y() : side * s.from.x() > side * end.x()) end = s.from;
  }
  rows.add(side < 0, {sheet.view.paper(end), sheet.view.paper(Vec2(end + sheet.plan.opening)),
                      "stroke " + size_text(sheet.plan.opening.y())});
}

}  // namespace

void add_mould_dimensions(const SectionSheet& sheet) {
  const double below = kFirstRow + (leans(sheet) ? kRow + 2 : 0);
  const double reach_row = sheet.view_box.low.y() - below, bottom = reach_row - 1.5;
  const double top = top_of(sheet) + kFirstRow;
  SideRows rows;
  add_centre_line(sheet, bottom, top);
  add_pull_line(sheet, bottom, top - kFirstRow / 2);
  add_pins(sheet);
  add_chord(sheet);
  if (!leans(sheet)) add_opening_height(sheet, rows);
  add_stroke(sheet, rows);
  add_former_height(sheet, Group::lower, rows);
  add_former_height(sheet, Group::upper, rows);
  rows.draw(sheet);
  add_reaches(sheet, reach_row);
  add_beam_length(sheet, leans(sheet) ? kFirstRow : kFirstRow + kRow);
  add_former_width(sheet, Group::lower);
  add_former_width(sheet, Group::upper);
  if (leans(sheet)) add_leaning_height(sheet);
  add_chord_size(sheet);
  add_mould_notes(sheet);
  add_pin_note(sheet);
  add_pull_note(sheet, top - kFirstRow / 2);
}

}  // namespace lamwright::drawing
