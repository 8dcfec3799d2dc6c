#include "exporters/drawing/section_notes.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/note.hpp"
#include "exporters/drawing/section_view.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

void add_exit_note(const SectionSheet& sheet, const StrapEnd& end, bool left) {
  if (end.exit < kTangent) return;
  const Vec2 run = (end.roller ? end.roller->on : end.mark) - end.leaves;
  const double way = std::atan2(run.y(), run.x()) - (left ? end.exit : -end.exit) * 0.6;
  const Vec2 tip = sheet.view.paper(end.leaves) + kExitRadius * direction(way);
  add_note(sheet.drawing, {tip, {"exit " + angle_text(end.exit)}, left ? kPi : 0, 10, 60, LeaderEnd::arrow},
           sheet.field);
}

void add_bend_radii(const SectionSheet& sheet) {
  const auto section = std::find_if(sheet.plan.sections.begin(), sheet.plan.sections.end(),
                                    [&](const Section& s) { return std::abs(s.z - sheet.z) < kSamePoint; });
  if (section == sheet.plan.sections.end()) return;
  for (const Segment& s : segments(section->lower)) {
    if (s.straight()) continue;
    const Vec2 at = s.point(0.3), inward = s.turn < 0 ? Vec2(s.centre - at) : Vec2(at - s.centre);
    add_note(sheet.drawing,
             {sheet.view.paper(at),
              {"R" + size_text(s.radius)},
              std::atan2(inward.y(), inward.x()),
              8,
              40,
              LeaderEnd::arrow},
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
    case Layer::Kind::bed_caul:
      return "bed caul " + size_text(layer.thickness);
    case Layer::Kind::top_caul:
      return "top caul " + size_text(layer.thickness);
    case Layer::Kind::sheathing:
      return "sheathing " + size_text(layer.thickness);
    case Layer::Kind::liner:
      return "liner " + size_text(layer.thickness);
    default:
      return {};
  }
}

void add_layer_note(const SectionSheet& sheet, const Layer& layer, const std::string& text, double share) {
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

void add_layer_notes(const SectionSheet& sheet) {
  double share = 0.7;
  for (auto layer = sheet.plan.layers.rbegin(); layer != sheet.plan.layers.rend(); ++layer) {
    const std::string text = layer->kind == Layer::Kind::panel ? pack_text(sheet.plan) : name_of(*layer);
    if (text.empty()) continue;
    add_layer_note(sheet, *layer, text, share);
    share -= 0.07;
  }
}

void add_strap_notes(const SectionSheet& sheet) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  if (!closure) return;
  const StrapEnd& end = closure->left;
  const Vec2 from = run_start(end), to = end.mark;
  const auto note = [&](const Vec2& tip, const std::string& text, LeaderEnd mark) {
    add_note(sheet.drawing, {sheet.view.paper(tip), {text}, kPi, 10, 70, mark}, sheet.field);
  };
  const double space = ratchet_space(sheet.plan, *closure);
  if (space > 0)
    note(from + 0.62 * (to - from) + Vec2(-kRatchetHalf / 2, 0), "ratchet space " + size_text(space),
         LeaderEnd::dot);
  note(end.leaves, "strap", LeaderEnd::arrow);
  if (end.roller)
    note(end.roller->axis, "guide roller " + diameter_text(end.roller->diameter), LeaderEnd::dot);
}

void add_strap_hole_note(const SectionSheet& sheet) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  const Body* beam = body_of(sheet, PartKind::beam);
  if (!closure || !beam) return;
  const Part& part = sheet.plan.parts[beam->part];
  for (const Bore& bore : part.bores()) {
    if (bore.use != BoreUse::strap) continue;
    const Vec2 at = Projection{}.point(beam->placed.point(bore.at));
    if ((at - closure->right.mark).norm() > 0.5) continue;
    const Vec2 rim = sheet.view.paper(Vec2(at + bore.diameter / 2 * direction(-kPi / 4)));
    return add_note(sheet.drawing,
                    {rim, {"strap hole " + diameter_text(bore.diameter)}, -kPi / 4, 8, 70, LeaderEnd::arrow},
                    sheet.field);
  }
}

bool holds(const std::vector<Segment>& loop, const Box2& room) {
  const Outline outline(loop, "view");
  const Path corners = rectangle(room);
  return std::all_of(corners.segments.begin(), corners.segments.end(),
                     [&](const Segment& s) { return outline.contains(s.from); });
}

void add_body_names(const SectionSheet& sheet) {
  for (const Body* body : bodies_at(sheet.plan, sheet.z)) {
    const PartKind kind = sheet.plan.parts[body->part].kind();
    const std::string name = former(kind)                      ? "former"
                             : kind == PartKind::pressing_beam ? "pressing beam"
                                                               : to_text(kind);
    const auto loop = sheet.view.paper(outline_of(sheet.plan, *body));
    const Box2 box = box_of(loop);
    const Vec2 wanted = (box.low + box.high) / 2 + Vec2(0.18 * box.size().x(), 0);
    const auto inside = [&](const Box2& room) { return holds(loop, room); };
    if (add_inner_text(sheet.drawing, {name, wanted, 60, kTextHeight}, inside)) continue;
    if (add_inner_text(sheet.drawing, {name, wanted, 60, kSmallHeight}, inside)) continue;
    add_note(sheet.drawing, {(box.low + box.high) / 2, {name}, kPi / 2, 8, 60}, sheet.field);
  }
}

// One of each kind is named.
void add_block_names(const SectionSheet& sheet) {
  for (const auto& [kind, name] :
       {std::pair{PartKind::fixing_block, "fixing block"}, {PartKind::spacer_block, "spacer block"}})
    for (const Body* body : blocks_behind(sheet.plan, sheet.z)) {
      if (sheet.plan.parts[body->part].kind() != kind) continue;
      const Box2 box = box_of(sheet.view.paper(outline_of(sheet.plan, *body)));
      add_note(sheet.drawing,
               {Vec2(box.low.x() + 0.3 * box.size().x(), box.low.y() + 0.4 * box.size().y()),
                {name},
                -kPi / 2,
                8,
                70,
                LeaderEnd::dot},
               sheet.field);
      break;
    }
}

void add_base_note(const SectionSheet& sheet) {
  const Vec2 tip{beam_end(sheet, false), sheet.view.y(0)};
  add_note(sheet.drawing, {tip, {"base line Y = 0"}, kPi / 4, 8, 60, LeaderEnd::arrow}, sheet.field);
}

}  // namespace

const Body* body_of(const SectionSheet& sheet, PartKind kind) {
  for (const Body* body : bodies_at(sheet.plan, sheet.z))
    if (sheet.plan.parts[body->part].kind() == kind) return body;
  return nullptr;
}

const Body* beam_of(const SectionSheet& sheet) {
  const Body* beam = body_of(sheet, PartKind::beam);
  return beam ? beam : body_of(sheet, PartKind::bearer);
}

// X on paper where the beam ends, or the view without one.
double beam_end(const SectionSheet& sheet, bool left) {
  const Body* beam = beam_of(sheet);
  const Box2 box = beam ? sheet.view.paper(box_of(outline_of(sheet.plan, *beam))) : sheet.view_box;
  return left ? box.low.x() : box.high.x();
}

void add_section_notes(const SectionSheet& sheet) {
  add_body_names(sheet);
  add_block_names(sheet);
  add_bend_radii(sheet);
  add_layer_notes(sheet);
  at_both_ends(sheet, add_exit_note);
  add_strap_notes(sheet);
  add_strap_hole_note(sheet);
  add_base_note(sheet);
}

}  // namespace lamwright::drawing
