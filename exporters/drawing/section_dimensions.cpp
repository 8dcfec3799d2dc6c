#include "exporters/drawing/section_dimensions.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/section_view.hpp"
#include "exporters/drawing/text.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kFirstRow = 9;  // from the view to the first dimension line
constexpr double kRow = 8;
constexpr double kExitRadius = 20;  // of the arc that shows the exit angle

struct Sheet {
  Drawing& drawing;
  const PressPlan& plan;
  const View& view;
  Box2 field;    // for notes
  Box2 view_box;  // of the bodies, on paper
  double z;
};

const Body* body_of(const Sheet& sheet, PartKind kind) {
  for (const Body* body : bodies_at(sheet.plan, sheet.z))
    if (sheet.plan.parts[body->part].kind() == kind) return body;
  return nullptr;
}

const Body* beam_of(const Sheet& sheet) {
  const Body* beam = body_of(sheet, PartKind::beam);
  return beam ? beam : body_of(sheet, PartKind::bearer);
}

// X on paper where the beam ends, or the view without one.
double beam_end(const Sheet& sheet, bool left) {
  const Body* beam = beam_of(sheet);
  const Box2 box = beam ? sheet.view.paper(box_of(outline_of(sheet.plan, *beam))) : sheet.view_box;
  return left ? box.low.x() : box.high.x();
}

// The centre line X = 0 and, at its upper end, the arrow of section A-A.
void add_centre_line(const Sheet& sheet, double bottom) {
  const double x = sheet.view.x(0), top = sheet.view_box.high.y() + 9;
  sheet.drawing.add(pens::kCentre, line({x, bottom}, {x, top}));
  sheet.drawing.add(pens::kDimension, line({x, top}, {x + 8, top}));
  arrow(sheet.drawing, {x + 8, top}, {1, 0});
  sheet.drawing.add(pens::kText, Text{{x - 1.5, top - 1}, "A", kTextHeight, Anchor::right});
}

// A highest point of an outline: an end of one of its edges or the top of an arc.
Vec2 highest(const std::vector<Segment>& loop) {
  Vec2 top = loop.front().from;
  for (const Segment& s : loop) {
    if (s.from.y() > top.y()) top = s.from;
    const Vec2 crown = s.centre + Vec2(0, s.radius);
    if (!s.straight() && crown.y() > top.y() + kSamePoint && distance(s, crown) < kSamePoint) top = crown;
  }
  return top;
}

void add_former_size(const Sheet& sheet) {
  const Body* former = body_of(sheet, PartKind::former_lower);
  if (!former) return;
  const auto loop = outline_of(sheet.plan, *former);
  const Box2 box = box_of(loop);
  // The width stands inside, just above the foot, where both sides are as wide as they get under square sides.
  const double y = sheet.view.y(box.low.y()) + 7;
  const auto sides = [&] {
    Span span{INFINITY, -INFINITY};
    const double height = (y - sheet.view.origin.y()) / sheet.view.scale;
    const Segment level = line({box.low.x() - 1, height}, {box.high.x() + 1, height});
    for (const Segment& s : loop)
      for (const Vec2& p : crossings(level, s)) span = {std::min(span.low, p.x()), std::max(span.high, p.x())};
    return span;
  }();
  const Vec2 top = highest(loop), foot = sheet.view.paper({top.x(), box.low.y()}), crest = sheet.view.paper({top.x(), box.high.y()});
  vertical_dimension(sheet.drawing, {foot, crest, size_text(box.size().y()), 0.62}, foot.x() - 14);
  const bool square_sides = std::abs(sides.size() - box.size().x()) < 0.05;
  if (square_sides)
    horizontal_dimension(sheet.drawing, {sheet.view.paper({sides.low, box.low.y()}), sheet.view.paper({sides.high, box.low.y()}),
                                         size_text(sides.size()), 0.25, false}, y);
}

void add_widths(const Sheet& sheet) {
  double y = sheet.view_box.low.y() - kFirstRow;
  const Vec2 left = sheet.plan.neutral.start().point, right = sheet.plan.neutral.end().point;
  const Vec2 a = sheet.view.paper(left), b = sheet.view.paper(right);
  horizontal_dimension(sheet.drawing, {a, b, "chord " + size_text((right - left).norm()), 0.25}, y);
  if (const Closure* closure = closure_at(sheet.plan, sheet.z)) {
    const Vec2 middle{sheet.view.x(0), sheet.view_box.low.y()};
    for (const Vec2& mark : {closure->left.mark, closure->right.mark})
      horizontal_dimension(sheet.drawing, {sheet.view.paper(mark), middle, size_text(std::abs(mark.x()))}, y - kRow);
    y -= kRow;
  }
  if (const Body* beam = beam_of(sheet)) {
    const Box2 box = box_of(outline_of(sheet.plan, *beam));
    const Vec2 low = sheet.view.paper(box.low), high = sheet.view.paper(Vec2(box.high.x(), box.low.y()));
    horizontal_dimension(sheet.drawing, {low, high, to_text(sheet.plan.parts[beam->part].kind()) + " " + size_text(box.size().x())}, y - kRow);
  }
}

// Heights that are equal on both sides are given on one.
bool mirrored(const Closure& closure) {
  const Vec2 marks = closure.left.mark - closure.right.mark, leaves = closure.left.leaves - closure.right.leaves;
  return std::abs(marks.y()) < 0.05 && std::abs(leaves.y()) < 0.05;
}

void add_heights(const Sheet& sheet) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  if (!closure) return;
  for (const bool left : {true, false}) {
    const StrapEnd& end = left ? closure->left : closure->right;
    if (left && mirrored(*closure)) continue;
    const double outward = left ? -1 : 1;
    const double edge = left ? sheet.view_box.low.x() : sheet.view_box.high.x();
    const Vec2 base{beam_end(sheet, left), sheet.view.y(0)}, mark = sheet.view.paper(end.mark), leaves = sheet.view.paper(end.leaves);
    vertical_dimension(sheet.drawing, {{base.x(), mark.y()}, base, size_text(std::abs(end.mark.y()))}, edge + outward * kFirstRow);
    vertical_dimension(sheet.drawing, {base, leaves, size_text(end.leaves.y())}, edge + outward * (kFirstRow + kRow));
  }
}

void add_strap_sizes(const Sheet& sheet, const StrapEnd& end, bool left) {
  const Vec2 from = sheet.view.paper(run_start(end)), to = sheet.view.paper(end.mark);
  const std::string run = "run " + size_text(end.run);
  if (end.roller) add_note(sheet.drawing, {(from + to) / 2, {run}, -kPi / 2, 10, 60, LeaderEnd::arrow}, sheet.field);
  const double outside = (left ? -1 : 1) * (sheet.view.scale * kRatchetHalf + 6);
  if (!end.roller) aligned_dimension(sheet.drawing, {from, to, run}, outside);
  if (end.exit < kTangent) return;
  const Layer* caul = layer_of(sheet.plan, Layer::Kind::top_caul);
  if (!caul) return;
  const Profile outer = offset(caul->inner, caul->thickness);
  const Pose pose = outer.at(outer.nearest(end.leaves).station);
  const double tangent = left ? pose.heading + kPi : pose.heading;  // the way the strap would go on
  constexpr double kPast = 3;
  const Vec2 vertex = sheet.view.paper(end.leaves);
  sheet.drawing.add(pens::kDimension, line(vertex, vertex + (kExitRadius + kPast) * direction(tangent)));
  angle_dimension(sheet.drawing, {vertex, tangent, left ? end.exit : -end.exit, kExitRadius, {}});
}

void add_exit_note(const Sheet& sheet, const StrapEnd& end, bool left) {
  if (end.exit < kTangent) return;
  const Vec2 run = (end.roller ? end.roller->on : end.mark) - end.leaves;
  const double way = std::atan2(run.y(), run.x()) - (left ? end.exit : -end.exit) * 0.6;
  const Vec2 tip = sheet.view.paper(end.leaves) + kExitRadius * direction(way);
  add_note(sheet.drawing, {tip, {"exit " + angle_text(end.exit)}, left ? kPi : 0, 10, 60, LeaderEnd::arrow}, sheet.field);
}

void add_bend_radii(const Sheet& sheet) {
  const auto section = std::find_if(sheet.plan.sections.begin(), sheet.plan.sections.end(),
                                    [&](const Section& s) { return std::abs(s.z - sheet.z) < kSamePoint; });
  if (section == sheet.plan.sections.end()) return;
  for (const Segment& s : segments(section->lower)) {
    if (s.straight()) continue;
    const Vec2 at = s.point(0.3), inward = s.turn < 0 ? Vec2(s.centre - at) : Vec2(at - s.centre);
    add_note(sheet.drawing, {sheet.view.paper(at), {"R" + size_text(s.radius)}, std::atan2(inward.y(), inward.x()), 8, 40, LeaderEnd::arrow},
             sheet.field);
  }
}

std::string pack_text(const PressPlan& plan) {
  const double cover = plan.panel.cover, blank = plan.panel.thickness;
  std::string text = "pack " + size_text(blank + 2 * cover);
  if (cover > 0) text += ": covers 2 x " + size_text(cover) + ", blank " + size_text(blank);
  return text;
}

std::string name_of(const Layer& layer) {
  switch (layer.kind) {
    case Layer::Kind::bed_caul: return "bed caul " + size_text(layer.thickness);
    case Layer::Kind::top_caul: return "top caul " + size_text(layer.thickness);
    case Layer::Kind::sheathing: return "sheathing " + size_text(layer.thickness);
    case Layer::Kind::liner: return "liner " + size_text(layer.thickness);
    default: return {};
  }
}

void add_layer_note(const Sheet& sheet, const Layer& layer, const std::string& text, double share) {
  double station = share * layer.inner.girth();
  for (const Slat& slat : layer.slats)  // into a slat, not into a gap
    if (slat.to > station) {
      station = slat.middle();
      break;
    }
  const Pose pose = layer.inner.at(station);
  const Vec2 tip = pose.point + layer.thickness / 2 * pose.normal();
  add_note(sheet.drawing, {sheet.view.paper(tip), {text}, pose.heading + kPi / 2, 10, 70}, sheet.field);
}

void add_layer_notes(const Sheet& sheet) {
  double share = 0.7;
  for (auto layer = sheet.plan.layers.rbegin(); layer != sheet.plan.layers.rend(); ++layer) {
    const std::string text = layer->kind == Layer::Kind::panel ? pack_text(sheet.plan) : name_of(*layer);
    if (text.empty()) continue;
    add_layer_note(sheet, *layer, text, share);
    share -= 0.07;
  }
}

void add_strap_notes(const Sheet& sheet) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  if (!closure) return;
  const StrapEnd& end = closure->left;
  const Vec2 from = run_start(end), to = end.mark;
  const auto note = [&](const Vec2& tip, const std::string& text, LeaderEnd mark) {
    add_note(sheet.drawing, {sheet.view.paper(tip), {text}, kPi, 10, 70, mark}, sheet.field);
  };
  const double space = ratchet_space(sheet.plan, *closure);
  if (space > 0)
    note(from + 0.62 * (to - from) + Vec2(-kRatchetHalf / 2, 0), "ratchet space " + size_text(space), LeaderEnd::dot);
  note(end.leaves, "strap", LeaderEnd::arrow);
  if (end.roller) note(end.roller->axis, "guide roller " + diameter_text(end.roller->diameter), LeaderEnd::dot);
}

void add_strap_hole_note(const Sheet& sheet) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  const Body* beam = body_of(sheet, PartKind::beam);
  if (!closure || !beam) return;
  const Part& part = sheet.plan.parts[beam->part];
  for (const Bore& bore : part.bores()) {
    if (bore.use != BoreUse::strap) continue;
    const Vec2 at = Projection{}.point(beam->placed.point(bore.at));
    if ((at - closure->right.mark).norm() > 0.5) continue;
    const Vec2 rim = sheet.view.paper(Vec2(at + bore.diameter / 2 * direction(-kPi / 4)));
    return add_note(sheet.drawing, {rim, {"strap hole " + diameter_text(bore.diameter)}, -kPi / 4, 8, 70, LeaderEnd::arrow}, sheet.field);
  }
}

bool holds(const std::vector<Segment>& loop, const Box2& room) {
  const Outline outline(loop, "view");
  const Path corners = rectangle(room);
  return std::all_of(corners.segments.begin(), corners.segments.end(), [&](const Segment& s) { return outline.contains(s.from); });
}

void add_body_names(const Sheet& sheet) {
  for (const Body* body : bodies_at(sheet.plan, sheet.z)) {
    const PartKind kind = sheet.plan.parts[body->part].kind();
    const std::string name = former(kind) ? "former" : kind == PartKind::pressing_beam ? "pressing beam" : to_text(kind);
    const auto loop = sheet.view.paper(outline_of(sheet.plan, *body));
    const Box2 box = box_of(loop);
    const Vec2 wanted = (box.low + box.high) / 2 + Vec2(0.18 * box.size().x(), 0);
    const auto inside = [&](const Box2& room) { return holds(loop, room); };
    if (add_inner_text(sheet.drawing, {name, wanted, 60, kTextHeight}, inside)) continue;
    if (add_inner_text(sheet.drawing, {name, wanted, 60, kSmallHeight}, inside)) continue;
    add_note(sheet.drawing, {(box.low + box.high) / 2, {name}, kPi / 2, 8, 60}, sheet.field);
  }
}

void add_base_note(const Sheet& sheet) {
  const Vec2 tip{beam_end(sheet, false), sheet.view.y(0)};
  add_note(sheet.drawing, {tip, {"base line Y = 0"}, kPi / 4, 8, 60, LeaderEnd::arrow}, sheet.field);
}

Box2 body_box(const PressPlan& plan, double z, const View& view) {
  Box2 all;
  for (const Body* body : bodies_at(plan, z)) all.add(box_of(outline_of(plan, *body)));
  for (const Layer& layer : plan.layers) all.add(box_of(layer_loop(layer)));
  return view.paper(all);
}

}  // namespace

Margins section_margins() { return {42, 42, 32, 24}; }

void add_section_dimensions(Drawing& drawing, const PressPlan& plan, double z, const View& view, const Box2& field) {
  const Sheet sheet{drawing, plan, view, field, body_box(plan, z, view), z};
  add_centre_line(sheet, sheet.view_box.low.y() - kFirstRow - kRow - 1.5);
  add_former_size(sheet);
  add_widths(sheet);
  add_heights(sheet);
  if (const Closure* closure = closure_at(plan, z)) {
    add_strap_sizes(sheet, closure->left, true);
    add_strap_sizes(sheet, closure->right, false);
  }
  add_body_names(sheet);
  add_bend_radii(sheet);
  add_layer_notes(sheet);
  if (const Closure* closure = closure_at(plan, z)) {
    add_exit_note(sheet, closure->left, true);
    add_exit_note(sheet, closure->right, false);
  }
  add_strap_notes(sheet);
  add_strap_hole_note(sheet);
  add_base_note(sheet);
}

}  // namespace lamwright::drawing
