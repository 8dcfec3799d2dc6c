#include <algorithm>

#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/section_notes.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

bool holds(const std::vector<Segment>& loop, const Box2& room) {
  const Outline outline(loop, "view");
  const Path corners = rectangle(room);
  return std::all_of(corners.segments.begin(), corners.segments.end(),
                     [&](const Segment& s) { return outline.contains(s.from); });
}

// Two halves are told apart, and beams of different drilling by the names of their parts.
std::string name_of(const PressPlan& plan, const Body& body) {
  const Part& part = plan.parts[body.part];
  if (part.kind() == PartKind::pressing_beam) return "pressing beam";
  if (!two_moulds(plan)) return former(part.kind()) ? "former" : to_text(part.kind());
  if (former(part.kind())) return body.group == Group::upper ? "upper former" : "lower former";
  return part.name();
}

// From outside, to a point between its contact edge and its foot.
void add_mould_name(const SectionSheet& sheet, const std::vector<Segment>& loop, const std::string& name) {
  const Box2 box = box_of(loop);
  std::vector<TipChoice> tips;
  for (const double across : {0.7, 0.8, 0.3, 0.6, 0.2})
    for (const double up : {0.5, 0.75, 0.25}) {
      const double x = box.low.x() + across * box.size().x();
      for (const Span& cut : cut_at(loop, x)) tips.push_back({{x, cut.low + up * cut.size()}, 0});
    }
  const Vec2 middle = (box.low + box.high) / 2;
  if (tips.empty()) tips.push_back({middle, 0});
  add_note(sheet.drawing, {tips.front().tip, {name}, 0, 8, 60, LeaderEnd::dot, kSmallHeight, kLongLeader},
           tips, sheet.field);
}

// The lower left of a block, then other places in it.
std::vector<TipChoice> tips_in(const SectionSheet& sheet, const Body& block) {
  const Box2 box = box_of(sheet.view.paper(outline_of(sheet.plan, block)));
  std::vector<TipChoice> out;
  for (const Vec2& share : {Vec2(0.3, 0.4), Vec2(0.7, 0.6), Vec2(0.5, 0.5)})
    out.push_back({box.low + Vec2(share.cwiseProduct(box.size())), -kPi / 2});
  return out;
}

}  // namespace

// Small stops get one note for all.
void add_body_names(const SectionSheet& sheet) {
  for (const Body* body : bodies_at(sheet.plan, sheet.z)) {
    if (sheet.plan.parts[body->part].kind() == PartKind::stop) continue;
    const std::string name = name_of(sheet.plan, *body);
    const auto loop = sheet.view.paper(outline_of(sheet.plan, *body));
    const Box2 box = box_of(loop);
    const Vec2 wanted = (box.low + box.high) / 2 + Vec2(0.18 * box.size().x(), 0);
    const auto inside = [&](const Box2& room) { return holds(loop, room); };
    if (add_inner_text(sheet.drawing, {name, wanted, 60, kTextHeight}, inside)) continue;
    if (add_inner_text(sheet.drawing, {name, wanted, 60, kSmallHeight}, inside)) continue;
    if (two_moulds(sheet.plan))
      add_mould_name(sheet, loop, name);
    else
      add_note(sheet.drawing, {(box.low + box.high) / 2, {name}, kPi / 2, 8, 60}, sheet.field);
  }
}

// One of each kind is named.
void add_block_names(const SectionSheet& sheet) {
  const bool both = two_moulds(sheet.plan);
  for (const auto& [kind, name] :
       {std::pair{PartKind::fixing_block, "fixing block"}, {PartKind::spacer_block, "spacer block"}}) {
    std::vector<TipChoice> tips;
    for (const Body* body : blocks_behind(sheet.plan, sheet.z))
      if (sheet.plan.parts[body->part].kind() == kind)
        for (const TipChoice& tip : tips_in(sheet, *body)) tips.push_back(tip);
    if (tips.empty()) continue;
    if (!both) tips.resize(1);
    add_note(
        sheet.drawing,
        {tips.front().tip, {name}, -kPi / 2, 8, 70, LeaderEnd::dot, kSmallHeight, both ? kLongLeader : 0},
        tips, sheet.field);
  }
}

}  // namespace lamwright::drawing
