#include "exporters/drawing/section_dimensions.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/mould_dimensions.hpp"
#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/section_notes.hpp"
#include "exporters/drawing/section_view.hpp"
#include "exporters/drawing/text.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

// The ends of the outline's widest stretch, each the lowest point there.
struct Widest {
  Vec2 left, right;
};

Widest widest(const std::vector<Segment>& loop) {
  const Box2 box = box_of(loop);
  Widest out{{box.low.x(), INFINITY}, {box.high.x(), INFINITY}};
  const auto take = [&](const Vec2& p) {
    for (Vec2* end : {&out.left, &out.right})
      if (std::abs(p.x() - end->x()) < kSamePoint) end->y() = std::min(end->y(), p.y());
  };
  for (const Segment& s : loop) {
    take(s.from);
    for (const double side : {-s.radius, s.radius}) {
      const Vec2 extreme = s.centre + Vec2(side, 0);
      if (!s.straight() && distance(s, extreme) < kSamePoint) take(extreme);
    }
  }
  return out;
}

// Inside the former: its height beside its highest point, its width just above the foot, or where it is
// widest.
void add_former_size(const SectionSheet& sheet) {
  constexpr double kBesideTop = 14, kAboveFoot = 7;
  const Body* former = body_of(sheet, PartKind::former_lower);
  if (!former) return;
  const auto loop = outline_of(sheet.plan, *former);
  const Box2 box = box_of(loop);
  const double top = highest(loop).x();
  const Vec2 foot = sheet.view.paper({top, box.low.y()}), crest = sheet.view.paper({top, box.high.y()});
  vertical_dimension(sheet.drawing, {foot, crest, size_text(box.size().y()), 0.62}, foot.x() - kBesideTop);
  const auto [left, right] = widest(loop);
  const bool at_foot = std::max(left.y(), right.y()) < box.low.y() + kSamePoint;
  const double level = at_foot ? foot.y() + kAboveFoot : sheet.view.y(std::min(left.y(), right.y()));
  const Vec2 side{left.x(), (level - sheet.view.origin.y()) / sheet.view.scale};
  const bool touches_sides =
      std::any_of(loop.begin(), loop.end(), [&](const Segment& s) { return distance(s, side) < kSamePoint; });
  const Linear width{sheet.view.paper(left), sheet.view.paper(right), size_text(box.size().x()), 0.25,
                     !touches_sides};
  horizontal_dimension(sheet.drawing, width, level);
}

// From the inside out: chord, marks, beam. The chord comes last, so that its text keeps clear of the other
// lines.
void add_widths(const SectionSheet& sheet) {
  const double chord_row = sheet.view_box.low.y() - kFirstRow;
  double y = chord_row - kRow;
  if (const Closure* closure = closure_at(sheet.plan, sheet.z)) {
    const Vec2 middle{sheet.view.x(0), sheet.view_box.low.y()};
    for (const Vec2& mark : {closure->left.mark, closure->right.mark})
      horizontal_dimension(sheet.drawing, {sheet.view.paper(mark), middle, size_text(std::abs(mark.x()))}, y);
    y -= kRow;
  }
  if (const Body* beam = beam_of(sheet)) {
    const Box2 box = box_of(outline_of(sheet.plan, *beam));
    const Vec2 low = sheet.view.paper(box.low), high = sheet.view.paper(Vec2(box.high.x(), box.low.y()));
    const std::string name = to_text(sheet.plan.parts[beam->part].kind());
    horizontal_dimension(sheet.drawing, {low, high, name + " " + size_text(box.size().x())}, y);
  }
  const Vec2 left = sheet.plan.neutral.start().point, right = sheet.plan.neutral.end().point;
  const std::string size = size_text((right - left).norm());
  // The text stands in the left half, clear of the centre line; without its name where that is short.
  const bool named =
      sheet.view.scale * (right - left).norm() / 2 > text_width("chord " + size, kSmallHeight) + 8;
  const std::string text = named ? "chord " + size : size;
  horizontal_dimension(sheet.drawing, {sheet.view.paper(left), sheet.view.paper(right), text, 0.25},
                       chord_row);
}

// Heights that are equal on both sides are given on one.
bool mirrored(const Closure& closure) {
  const Vec2 marks = closure.left.mark - closure.right.mark,
             leaves = closure.left.leaves - closure.right.leaves;
  return std::abs(marks.y()) < 0.05 && std::abs(leaves.y()) < 0.05;
}

void add_heights(const SectionSheet& sheet) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  if (!closure) return;
  for (const bool left : {true, false}) {
    const StrapEnd& end = left ? closure->left : closure->right;
    if (left && mirrored(*closure)) continue;
    const double outward = left ? -1 : 1;
    const double edge = left ? sheet.view_box.low.x() : sheet.view_box.high.x();
    const Vec2 base{beam_end(sheet, left), sheet.view.y(0)}, mark = sheet.view.paper(end.mark),
                                                             leaves = sheet.view.paper(end.leaves);
    vertical_dimension(sheet.drawing, {{base.x(), mark.y()}, base, size_text(std::abs(end.mark.y()))},
                       edge + outward * kFirstRow);
    vertical_dimension(sheet.drawing, {base, leaves, size_text(end.leaves.y())},
                       edge + outward * (kFirstRow + kRow));
  }
}

void add_exit_angle(const SectionSheet& sheet, const StrapEnd& end, bool left) {
  const Layer* caul = layer_of(sheet.plan, Layer::Kind::top_caul);
  if (!caul || end.exit < kTangent) return;
  const Profile outer = offset(caul->inner, caul->thickness);
  const Pose pose = outer.at(outer.nearest(end.leaves).station);
  const double tangent = left ? pose.heading + kPi : pose.heading;  // the way the strap would go on
  constexpr double kPast = 3;
  const Vec2 vertex = sheet.view.paper(end.leaves);
  sheet.drawing.add(pens::kDimension, line(vertex, vertex + (kExitRadius + kPast) * direction(tangent)));
  angle_dimension(sheet.drawing, {vertex, tangent, left ? end.exit : -end.exit, kExitRadius, {}});
}

void add_run(const SectionSheet& sheet, const StrapEnd& end, bool left) {
  const Vec2 from = sheet.view.paper(run_start(end)), to = sheet.view.paper(end.mark);
  const std::string text = "run " + size_text(end.run);
  for (const double past : {6, 12, 18}) {
    const double offset = (left ? -1 : 1) * (sheet.view.scale * kRatchetHalf + past);
    if (end.roller || !aligned_dimension_fits(sheet.drawing, {from, to, text}, offset)) continue;
    return aligned_dimension(sheet.drawing, {from, to, text}, offset);
  }
  const double way = end.roller ? -kPi / 2 : left ? kPi : 0;
  add_note(sheet.drawing, {(from + to) / 2, {text}, way, 10, 60, LeaderEnd::arrow}, sheet.field);
}

// Along the beam's back, in the first free row and with its name where there is room.
void add_flat(const SectionSheet& sheet, const Vec2& from, const Vec2& to, const std::string& length) {
  for (const double row : {kFirstRow, kFirstRow + kRow})
    for (const std::string& text : {"flat " + length, length})
      if (aligned_dimension_fits(sheet.drawing, {from, to, text}, row))
        return aligned_dimension(sheet.drawing, {from, to, text}, row);
}

// Beams are as long as the flats that they press.
void add_flats(const SectionSheet& sheet) {
  for (const Body* body : bodies_at(sheet.plan, sheet.z)) {
    const Part& part = sheet.plan.parts[body->part];
    if (part.kind() != PartKind::pressing_beam) continue;
    const Vec3 size = part.box().size();
    const auto on_back = [&](double along) {
      return sheet.view.paper(body->placed.point({along, size.y(), 0}).head<2>());
    };
    add_flat(sheet, on_back(0), on_back(size.x()), size_text(size.x()));
  }
}

Box2 body_box(const PressPlan& plan, double z, const View& view) {
  Box2 all;
  for (const Body* body : bodies_at(plan, z)) all.add(box_of(outline_of(plan, *body)));
  for (const Layer& layer : plan.layers) all.add(box_of(layer_loop(layer)));
  return view.paper(all);
}

}  // namespace

Margins section_margins(const PressPlan& plan) {
  return two_moulds(plan) ? Margins{42, 42, 32, 30} : Margins{42, 42, 32, 24};
}

void add_section_dimensions(Drawing& drawing, const PressPlan& plan, double z, const View& view,
                            const Box2& field) {
  const SectionSheet sheet{drawing, plan, view, field, body_box(plan, z, view), z};
  if (two_moulds(plan)) return add_mould_dimensions(sheet);
  add_centre_line(sheet, sheet.view_box.low.y() - kFirstRow - kRow - 1.5,
                  sheet.view_box.high.y() + kFirstRow);
  add_former_size(sheet);
  add_widths(sheet);
  add_heights(sheet);
  at_both_ends(sheet, add_exit_angle);
  at_both_ends(sheet, add_run);
  add_flats(sheet);
  add_section_notes(sheet);
}

}  // namespace lamwright::drawing
