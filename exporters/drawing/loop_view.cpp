#include "exporters/drawing/loop_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/pens.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

// One leg: where it meets the lower and the upper half, at a distance `beside` its middle along X.
struct Leg {
  const StrapEnd& end;
  double slope;  // of the beams' outer faces; 0 for a leg from pin to pin

  Vec2 bottom(double beside) const { return end.mark + Vec2(beside, slope * beside); }
  Vec2 top(double beside) const { return end.leaves + Vec2(beside, slope * beside); }
};

Leg leg(const PressPlan& plan, const Closure& closure, const StrapEnd& end) {
  return {end, closure.loop->pinned ? 0 : std::tan(lean(plan, closure.z))};
}

const Closure* looped_at(const PressPlan& plan, double z) {
  const Closure* closure = closure_at(plan, z);
  return closure && closure->loop ? closure : nullptr;
}

void add_edge(Drawing& drawing, const PressPlan& plan, double z, const Leg& leg, double beside,
              const View& view) {
  const Vec2 bottom = leg.bottom(beside), top = leg.top(beside);
  std::vector<Span> covers;
  for (const Body* body : bodies_at(plan, z))
    for (const Span& span : cut_at(outline_of(plan, *body), bottom.x())) covers.push_back(span);
  const Covered seen = split({bottom.y(), top.y()}, covers);
  const auto upright = [&](const Span& y) {
    return view.paper(line({bottom.x(), y.low}, {bottom.x(), y.high}));
  };
  for (const Span& y : seen.hidden) drawing.add(pens::kHidden, upright(y));
  for (const Span& y : seen.visible) drawing.add(pens::kLoop, upright(y));
}

}  // namespace

Covered split(const Span& stretch, std::vector<Span> covers) {
  constexpr double kShortest = 0.01;  // rounding of where outlines are cut
  std::sort(covers.begin(), covers.end(), [](const Span& a, const Span& b) { return a.low < b.low; });
  Covered out;
  double at = stretch.low;
  const auto take = [&](std::vector<Span>& into, double to) {
    if (to - at <= kShortest) return;
    into.push_back({at, to});
    at = to;
  };
  for (const Span& cover : covers) {
    if (cover.high <= at || cover.low >= stretch.high) continue;
    take(out.visible, std::max(at, cover.low));
    take(out.hidden, std::min(cover.high, stretch.high));
  }
  take(out.visible, stretch.high);
  return out;
}

void add_loops(Drawing& drawing, const PressPlan& plan, double z, const View& view) {
  const Closure* closure = looped_at(plan, z);
  if (!closure) return;
  const double half = closure->width / 2;
  for (const StrapEnd* end : {&closure->left, &closure->right}) {
    const Leg at = leg(plan, *closure, *end);
    for (const double beside : {-half, half}) add_edge(drawing, plan, z, at, beside, view);
    if (closure->loop->pinned) continue;
    drawing.add(pens::kStrap, view.paper(line(at.bottom(-half), at.bottom(half))));
    drawing.add(pens::kStrap, view.paper(line(at.top(-half), at.top(half))));
  }
}

Box2 loops_box(const PressPlan& plan, double z) {
  Box2 all;
  const Closure* closure = looped_at(plan, z);
  if (!closure) return all;
  for (const StrapEnd* end : {&closure->left, &closure->right}) {
    const Leg at = leg(plan, *closure, *end);
    for (const double beside : {-closure->width / 2, closure->width / 2}) {
      all.add(at.bottom(beside));
      all.add(at.top(beside));
    }
  }
  return all;
}

void add_loops_edge_on(Drawing& drawing, const PressPlan& plan, const std::vector<Box2>& before,
                       const View& view) {
  for (const Closure& closure : plan.closures) {
    const Body* beam = beam_at(plan, closure.z, Group::lower);
    if (!closure.loop || !beam) continue;
    const Span across = depth_of(plan, *beam), up{closure.right.mark.y(), closure.right.leaves.y()};
    for (const double z : {across.low, across.high}) {
      std::vector<Span> covers;
      for (const Box2& box : before)
        if (box.low.x() < z - kSamePoint && box.high.x() > z + kSamePoint)
          covers.push_back({box.low.y(), box.high.y()});
      for (const Span& y : split(up, covers).visible)
        drawing.add(pens::kStrap, view.paper(line({z, y.low}, {z, y.high})));
    }
    if (closure.loop->pinned) continue;
    for (const double y : {up.low, up.high})
      drawing.add(pens::kStrap, view.paper(line({across.low, y}, {across.high, y})));
  }
}

}  // namespace lamwright::drawing
