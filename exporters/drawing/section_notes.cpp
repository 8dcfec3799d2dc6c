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
  const Section* section = section_of(sheet);
  if (!section) return;
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

void add_base_note(const SectionSheet& sheet) {
  const Vec2 tip{beam_end(sheet, false), sheet.view.y(0)};
  add_note(sheet.drawing, {tip, {"base line Y = 0"}, kPi / 4, 8, 60, LeaderEnd::arrow}, sheet.field);
}

}  // namespace

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
