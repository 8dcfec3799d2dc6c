#include "exporters/drawing/mould_notes.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/section_notes.hpp"
#include "exporters/drawing/section_view.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kIntoWood = radians(80);  // most that a leader to a contact edge turns from its normal

// Arcs of both contact edges that are written alike share a note, at the first of them.
struct Radius {
  std::string text;
  int count;
  std::vector<TipChoice> tips;  // model; the way is into the wood
};

void collect(const Profile& edge, double into, std::vector<Radius>& out) {
  for (const Segment& s : segments(edge)) {
    if (s.straight()) continue;
    const std::string text = "R" + size_text(s.radius);
    const auto same = std::find_if(out.begin(), out.end(), [&](const Radius& r) { return r.text == text; });
    if (same != out.end()) {
      ++same->count;
      continue;
    }
    out.push_back({text, 1, {}});
    for (const double share : {0.3, 0.7, 0.5, 0.15, 0.85}) {
      const Vec2 way = into * left_of(s.tangent(share));
      out.back().tips.push_back({s.point(share), std::atan2(way.y(), way.x())});
    }
  }
}

// Crowns of so large a radius are told by their height.
void add_crown(const SectionSheet& sheet, const Profile& edge) {
  const Pose pose = edge.at(0.3 * edge.girth());
  const std::string text = "both contact edges crowned by " + number(sheet.plan.crown->height, 2);
  add_note(sheet.drawing,
           {sheet.view.paper(pose.point),
            {text},
            pose.heading + kPi / 2,
            8,
            50,
            LeaderEnd::arrow,
            kSmallHeight,
            kLongLeader,
            kIntoWood},
           sheet.field);
}

void add_radii(const SectionSheet& sheet) {
  const Section* section = section_of(sheet);
  if (!section) return;
  if (sheet.plan.crown && section->upper) return add_crown(sheet, *section->upper);
  std::vector<Radius> all;
  collect(section->lower, -1, all);
  if (section->upper) collect(*section->upper, 1, all);
  for (Radius& r : all) {
    const std::string text = (r.count > 1 ? std::to_string(r.count) + " x " : "") + r.text;
    for (TipChoice& choice : r.tips) choice.tip = sheet.view.paper(choice.tip);
    const Note note{r.tips.front().tip, {text},       r.tips.front().way, 8,        50,
                    LeaderEnd::arrow,   kSmallHeight, kLongLeader,        kIntoWood};
    add_note(sheet.drawing, note, r.tips, sheet.field);
  }
}

void add_loop_notes(const SectionSheet& sheet) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  if (!closure || !closure->loop) return;
  const StrapEnd& end = closure->left;
  const double half = closure->width / 2, space = ratchet_space(sheet.plan, *closure);
  const auto note = [&](const Vec2& tip, const std::string& text, LeaderEnd mark) {
    add_note(sheet.drawing, {sheet.view.paper(tip), {text}, kPi, 10, 70, mark, kSmallHeight, kLongLeader},
             sheet.field);
  };
  if (space > 0)
    note(end.mark + Vec2(0, 0.8 * std::min(space, end.run)), "ratchet space " + size_text(space),
         LeaderEnd::dot);
  const std::string name = closure->loop->pinned ? "strap from pin to pin, " : "strap loop, ";
  note(end.mark + Vec2(-half, 0.65 * end.run), name + size_text(closure->width) + " wide", LeaderEnd::arrow);
}

void add_strap_pin_note(const SectionSheet& sheet) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  const Body* beam = beam_at(sheet.plan, sheet.z, Group::lower);
  if (!closure || !closure->loop || !closure->loop->pinned || !beam) return;
  for (const Bore& bore : sheet.plan.parts[beam->part].bores()) {
    const Vec2 at = Projection{}.point(beam->placed.point(bore.at));
    if (bore.use != BoreUse::strap || (at - closure->right.mark).norm() > 0.5) continue;
    const Vec2 rim = sheet.view.paper(Vec2(at + bore.diameter / 2 * direction(-kPi / 4)));
    return add_note(sheet.drawing,
                    {rim,
                     {"strap pin " + diameter_text(bore.diameter)},
                     -kPi / 4,
                     8,
                     70,
                     LeaderEnd::arrow,
                     kSmallHeight,
                     kLongLeader},
                    sheet.field);
  }
}

void add_stop_note(const SectionSheet& sheet) {
  const Body* stop = body_of(sheet, PartKind::stop);
  if (!stop) return;
  const Part& part = sheet.plan.parts[stop->part];
  const Vec2 size = part.outline().box().size();
  const Box2 box = sheet.view.paper(box_of(outline_of(sheet.plan, *stop)));
  add_note(sheet.drawing,
           {(box.low + box.high) / 2,
            {"stop " + size_text(size.x()) + " x " + size_text(size.y()) + ", " +
             size_text(part.thickness()) + " wide"},
            -kPi / 2,
            8,
            70,
            LeaderEnd::dot,
            kSmallHeight,
            kLongLeader},
           sheet.field);
}

void add_base_note(const SectionSheet& sheet) {
  const Body* beam = beam_at(sheet.plan, sheet.z, Group::lower);
  if (std::abs(lean(sheet.plan, sheet.z)) > kTangent || !beam)
    return add_note(
        sheet.drawing,
        {sheet.view.origin, {"X = 0, Y = 0"}, -kPi / 4, 8, 60, LeaderEnd::arrow, kSmallHeight, kLongLeader},
        sheet.field);
  const Box2 box = box_of(outline_of(sheet.plan, *beam));
  const Vec2 tip = sheet.view.paper(Vec2(box.high.x(), 0));
  add_note(sheet.drawing,
           {tip, {"base line Y = 0"}, kPi / 4, 8, 60, LeaderEnd::arrow, kSmallHeight, kLongLeader},
           sheet.field);
}

}  // namespace

void add_mould_notes(const SectionSheet& sheet) {
  add_body_names(sheet);
  add_layer_notes(sheet);
  add_radii(sheet);
  add_block_names(sheet);
  add_loop_notes(sheet);
  add_strap_pin_note(sheet);
  add_stop_note(sheet);
  add_base_note(sheet);
}

}  // namespace lamwright::drawing
