#include "exporters/drawing/section_view.hpp"

#include <algorithm>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/loop_view.hpp"
#include "exporters/drawing/open_view.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

const char* tint_of(PartKind kind) { return former(kind) ? tints::kBoard : tints::kTimber; }
const char* pen_of(PartKind kind) { return former(kind) ? pens::kPart : pens::kBeam; }

void add_bodies(Drawing& drawing, const PressPlan& plan, double z, const View& view) {
  for (const Body* body : bodies_at(plan, z)) {
    const Part& part = plan.parts[body->part];
    const Path outline{view.paper(outline_of(plan, *body)), true, {}};
    drawing.add(pens::kFill, Path{outline.segments, true, tint_of(part.kind())});
    drawing.add(pen_of(part.kind()), outline);
    add_bores(drawing, part, {body->placed, {}}, view, pens::kBore);
  }
}

void add_hidden_blocks(Drawing& drawing, const PressPlan& plan, double z, const View& view) {
  for (const Body* body : blocks_behind(plan, z))
    drawing.add(pens::kHidden, Path{view.paper(outline_of(plan, *body)), true, {}});
}

const char* pen_of(Layer::Kind kind) {
  switch (kind) {
    case Layer::Kind::panel:
      return pens::kPack;
    case Layer::Kind::cover:
    case Layer::Kind::liner:
      return pens::kCover;
    default:
      return pens::kCaul;
  }
}

const char* tint_of(Layer::Kind kind) { return kind == Layer::Kind::panel ? tints::kBlank : tints::kSlat; }

void add_sheet_layer(Drawing& drawing, const Layer& layer, const View& view) {
  const std::vector<Segment> loop = view.paper(layer_loop(layer));
  drawing.add(pens::kFill, Path{loop, true, tint_of(layer.kind)});
  drawing.add(pen_of(layer.kind), Path{loop, true, {}});
}

// Lower left, lower right, upper right, upper left as seen along the line. A slat is flat: it touches its
// line at its middle.
std::vector<Vec2> slat_corners(const Layer& layer, const Slat& slat) {
  const Pose pose = layer.inner.at(slat.middle());
  const Vec2 half = (slat.to - slat.from) / 2 * pose.tangent(), up = layer.thickness * pose.normal();
  return {pose.point - half, pose.point + half, pose.point + half + up, pose.point - half + up};
}

// Sides that two slats share are drawn once.
void add_slats(Drawing& drawing, const Layer& layer, const View& view) {
  std::vector<Vec2> before;
  for (const Slat& slat : layer.slats) {
    std::vector<Vec2> corners = slat_corners(layer, slat);
    for (Vec2& p : corners) p = view.paper(p);
    drawing.add(pens::kFill, polygon(corners, tint_of(layer.kind)));
    Path sides = polygon(corners);
    const bool shared = !before.empty() && (before[1] - corners[0]).norm() < kSamePoint &&
                        (before[2] - corners[3]).norm() < kSamePoint;
    if (shared) {
      sides.segments.pop_back();
      sides.closed = false;
    }
    drawing.add(pen_of(layer.kind), sides);
    before = corners;
  }
}

void add_layers(Drawing& drawing, const PressPlan& plan, const View& view) {
  for (const Layer& layer : plan.layers) {
    if (layer.slats.empty())
      add_sheet_layer(drawing, layer, view);
    else
      add_slats(drawing, layer, view);
  }
}

void add_ratchet(Drawing& drawing, const StrapEnd& end, double space, const View& view) {
  const Vec2 back = run_start(end) - end.mark;
  const double length = std::min(back.norm(), space);
  if (length < kSamePoint) return;
  const Vec2 along = length * back.normalized(), side = kRatchetHalf * left_of(back.normalized());
  const std::vector<Vec2> corners{end.mark - side, end.mark + side, end.mark + side + along,
                                  end.mark - side + along};
  drawing.add(pens::kRatchet, Path{view.paper(polygon(corners).segments), true, {}});
}

void add_strap_end(Drawing& drawing, const StrapEnd& end, double space, const View& view) {
  add_ratchet(drawing, end, space, view);
  centre_cross(drawing, view.paper(end.mark), view.scale * 10);
  if (!end.roller) return;
  const Vec2 axis = view.paper(end.roller->axis);
  drawing.add(pens::kBore, Circle{axis, view.scale * end.roller->diameter / 2, {}});
  centre_cross(drawing, axis, view.scale * end.roller->diameter / 2);
}

void add_strap(Drawing& drawing, const PressPlan& plan, double z, const View& view) {
  const Closure* closure = closure_at(plan, z);
  if (!closure) return;
  const double space = ratchet_space(plan, *closure);
  if (closure->loop) {
    add_loops(drawing, plan, z, view);
    for (const StrapEnd* end : {&closure->left, &closure->right}) add_ratchet(drawing, *end, space, view);
    return;
  }
  drawing.add(pens::kStrap, Path{view.paper(strap_path(plan, *closure)), false, {}});
  add_strap_end(drawing, closure->left, space, view);
  add_strap_end(drawing, closure->right, space, view);
}

}  // namespace

Box2 section_box(const PressPlan& plan, double z) {
  Box2 all;
  for (const Body* body : bodies_at(plan, z)) all.add(box_of(outline_of(plan, *body)));
  for (const Layer& layer : plan.layers) all.add(box_of(layer_loop(layer)));
  const Closure* closure = closure_at(plan, z);
  if (closure && !closure->loop)
    for (const Segment& s : strap_path(plan, *closure)) all.add(box(s));
  all.add(loops_box(plan, z));
  all.add(open_box(plan, z));
  return all;
}

void add_section(Drawing& drawing, const PressPlan& plan, double z, const View& view) {
  add_bodies(drawing, plan, z, view);
  add_hidden_blocks(drawing, plan, z, view);
  add_layers(drawing, plan, view);
  add_strap(drawing, plan, z, view);
  add_open_half(drawing, plan, z, view);
}

}  // namespace lamwright::drawing
