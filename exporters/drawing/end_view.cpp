#include "exporters/drawing/end_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/box_index.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/loop_view.hpp"
#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

struct Piece {
  Box2 box;  // (Z, Y)
  const char* pen;
  const char* tint;
};

bool block(PartKind kind) { return kind == PartKind::spacer_block || kind == PartKind::fixing_block; }

// Leaning beams rise or fall beyond the section.
std::vector<Piece> leaning_pieces(const PressPlan& plan) {
  std::vector<Piece> out;
  for (const Body& body : plan.bodies) {
    if (!of_mould(plan, body) || plan.parts[body.part].kind() != PartKind::beam) continue;
    const auto outline = outline_of(plan, body);
    const std::vector<Span> cut = cut_at(outline, 0);
    if (cut.empty() || std::abs(body.placed.x.y()) < kTangent) continue;
    const Span z = depth_of(plan, body);
    Box2 box{{z.low, cut.front().low}, {z.high, cut.back().high}};
    for (const Segment& s : outline)
      if (s.from.x() > 0) box.add(Vec2(z.low, s.from.y()));
    out.push_back({box, pens::kBlock, tints::kTimber});
  }
  return out;
}

// Beyond the section as one looks along X.
bool beyond(const Box2& front) { return front.high.x() > 0; }

bool same(const Box2& a, const Box2& b) {
  return (a.low - b.low).norm() < kSamePoint && (a.high - b.high).norm() < kSamePoint;
}

std::vector<Box2> spacer_blocks_beyond(const PressPlan& plan) {
  std::vector<Box2> out;
  for (const Body& body : plan.bodies) {
    if (!of_mould(plan, body) || plan.parts[body.part].kind() != PartKind::spacer_block) continue;
    const Span z = depth_of(plan, body);
    const Box2 front = box_of(outline_of(plan, body));
    if (beyond(front)) out.push_back({{z.low, front.low.y()}, {z.high, front.high.y()}});
  }
  return out;
}

// Spacer blocks seen beyond the section; rows one behind the other show once. Fixing blocks would hide them.
std::vector<Piece> block_pieces(const PressPlan& plan) {
  const std::vector<Box2> all = spacer_blocks_beyond(plan);
  Box2 frame;
  for (const Box2& box : all) frame.add(box);
  BoxIndex seen(frame);
  std::vector<Box2> shown;
  std::vector<Piece> out;
  for (const Box2& box : all) {
    if (seen.any(box, [&](std::size_t i) { return same(shown[i], box); })) continue;
    seen.add(box);
    shown.push_back(box);
    out.push_back({box, pens::kBlock, tints::kTimber});
  }
  return out;
}

std::vector<Piece> body_pieces(const PressPlan& plan) {
  std::vector<Piece> out;
  for (const Body& body : plan.bodies) {
    const PartKind kind = plan.parts[body.part].kind();
    if (!of_mould(plan, body) || block(kind)) continue;
    const Span z = depth_of(plan, body);
    for (const Span& y : cut_at(outline_of(plan, body), 0))
      out.push_back({{{z.low, y.low}, {z.high, y.high}},
                     former(kind) ? pens::kPart : pens::kBeam,
                     former(kind) ? tints::kBoard : tints::kTimber});
  }
  return out;
}

std::vector<Piece> layer_pieces(const PressPlan& plan) {
  std::vector<Piece> out;
  for (const Layer& layer : plan.layers) {
    const bool panel = layer.kind == Layer::Kind::panel;
    const char* pen = panel ? pens::kPack : layer.kind == Layer::Kind::cover ? pens::kCover : pens::kCaul;
    for (const Span& y : cut_at(layer_loop(layer), 0))
      out.push_back(
          {{{0, y.low}, {plan.panel.blank_width(), y.high}}, pen, panel ? tints::kBlank : tints::kSlat});
  }
  return out;
}

std::vector<Piece> pieces(const PressPlan& plan) {
  std::vector<Piece> all = block_pieces(plan);
  for (const auto& more : {leaning_pieces(plan), body_pieces(plan), layer_pieces(plan)})
    all.insert(all.end(), more.begin(), more.end());
  return all;
}

Box2 box_of_pieces(const std::vector<Piece>& all) {
  Box2 box;
  for (const Piece& piece : all) box.add(piece.box);
  return box;
}

// Over the top caul a strap is seen edge on at X = 0; loops stand beyond, behind everything else.
void add_straps(Drawing& drawing, const PressPlan& plan, const std::vector<Piece>& all, const View& view) {
  if (two_moulds(plan)) {
    std::vector<Box2> before;
    for (const Piece& piece : all) before.push_back(piece.box);
    return add_loops_edge_on(drawing, plan, before, view);
  }
  const Layer* caul = layer_of(plan, Layer::Kind::top_caul);
  if (!caul) return;
  const std::vector<Span> cut = cut_at(layer_loop(*caul), 0);
  if (cut.empty()) return;
  for (const Closure& closure : plan.closures) {
    const double half = closure.width / 2, y = cut.back().high;
    drawing.add(pens::kStrap, line(view.paper({closure.z - half, y}), view.paper({closure.z + half, y})));
  }
}

std::string pitch_text(const PressPlan& plan) {
  return plan.sections.size() < 2 ? "" : "pitch " + size_text(plan.sections[1].z - plan.sections[0].z);
}

// Whether the first pitch is long enough on paper to carry its dimension; else it stands in the view's name.
bool pitch_fits(const PressPlan& plan, const View& view) {
  if (plan.sections.size() < 2) return false;
  return view.scale * (plan.sections[1].z - plan.sections[0].z) >
         text_width(pitch_text(plan), kSmallHeight) + 3;
}

void add_stations(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& box) {
  constexpr double kPitchRow = 7;
  const double bottom = view.y(box.low.y());
  OrdinateRow row{
      {}, bottom - kPitchRow - 3, bottom - kPitchRow - 7, view.x(box.low.x()) - 8, view.x(box.high.x()) + 8};
  const auto add = [&](double z, bool datum) {
    row.ordinates.push_back({{view.x(z), bottom - 1}, size_text(z), datum});
  };
  add(0, true);
  for (const Section& section : plan.sections) add(section.z, false);
  add(plan.panel.blank_width(), false);
  ordinates(drawing, row);
  if (!pitch_fits(plan, view)) return;
  const double a = plan.sections[0].z, b = plan.sections[1].z;
  horizontal_dimension(drawing, {{view.x(a), bottom}, {view.x(b), bottom}, pitch_text(plan), 0.5, false},
                       bottom - kPitchRow);
}

void add_names(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& field) {
  const auto blocks = block_pieces(plan);
  if (blocks.empty()) return;
  const Vec2 middle = view.paper(Vec2((blocks.front().box.low + blocks.front().box.high) / 2));
  const Box2 block = view.paper(blocks.front().box);
  const auto inside = [&](const Box2& room) { return within(room, grown(block, 0.3)); };
  for (const double height : {kSmallHeight, kLabelHeight})
    if (add_inner_text(drawing, {"spacer block", middle, 25, height}, inside)) return;
  add_note(drawing, {middle, {"spacer block"}, 0, 8, 60}, field);
}

std::string name_of(const PressPlan& plan, const View& view, const std::string& scale) {
  std::string name = "A-A (X = 0): " + counted(static_cast<long>(plan.sections.size()),
                                               two_moulds(plan) ? "former pair" : "former");
  if (plan.sections.size() > 1 && !pitch_fits(plan, view)) name += ", " + pitch_text(plan);
  if (!scale.empty()) name += ", scale " + scale;
  return name;
}

}  // namespace

Box2 end_box(const PressPlan& plan) { return box_of_pieces(pieces(plan)); }

Margins end_margins(const PressPlan& plan, const Scale& scale, bool reduced) {
  constexpr double kLeft = 14, kRight = 16, kRoom = 2;
  double wider = 0;
  if (two_moulds(plan)) {  // sheets of one mould keep the room they have
    const std::string name = name_of(plan, {scale.factor, {0, 0}}, reduced ? scale.text : std::string{});
    const double view = scale.factor * end_box(plan).size().x() + kLeft + kRight;
    wider = std::max(0.0, text_width(name, kTextHeight) + kRoom - view) / 2;
  }
  return {kLeft + wider, kRight + wider, section_margins(plan).bottom, section_margins(plan).top};
}

void add_end_view(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& field,
                  const std::string& scale) {
  const auto all = pieces(plan);
  if (all.empty()) return;
  const Box2 box = box_of_pieces(all);
  for (const Piece& piece : all) {
    drawing.add(pens::kFill, rectangle(view.paper(piece.box), piece.tint));
    drawing.add(piece.pen, rectangle(view.paper(piece.box)));
  }
  add_straps(drawing, plan, all, view);
  const double top = view.y(box.high.y());
  const double width = plan.panel.blank_width();
  horizontal_dimension(drawing, {{view.x(0), top}, {view.x(width), top}, "pack width " + size_text(width)},
                       top + 9);
  add_stations(drawing, plan, view, box);
  const std::string name = name_of(plan, view, scale);
  const double half = text_width(name, kTextHeight) / 2;
  const double middle = std::min(view.x(width / 2), field.high.x() - half);
  const Text title{{middle, top + 19}, name, kTextHeight, Anchor::middle};
  if (two_moulds(plan)) drawing.add(pens::kText, title);  // names then keep clear of it
  add_names(drawing, plan, view, field);
  if (!two_moulds(plan)) drawing.add(pens::kText, title);
}

}  // namespace lamwright::drawing
