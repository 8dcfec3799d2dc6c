#include "exporters/drawing/open_view.hpp"

#include <algorithm>

#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/pens.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

bool along(const Segment& inner, const Segment& outer) {
  return inner.straight() && outer.straight() && distance(outer, inner.from) < kSamePoint &&
         distance(outer, inner.to) < kSamePoint;
}

// Of caul or sheathing on the upper mould only the pack's side and the two ends: the former's contact edge
// closes them.
std::vector<Segment> lifted_edge(const std::vector<Layer>& layers) {
  if (layers.empty()) return {};
  const Layer& near = layers.front();
  double thickness = 0;
  for (const Layer& layer : layers) thickness += layer.thickness;
  const Profile edge = near.slats.empty() ? near.inner
                                          : cut(near.inner, std::max(0.0, near.slats.front().from),
                                                std::min(near.inner.girth(), near.slats.back().to));
  const Pose &start = edge.start(), &end = edge.end();
  std::vector<Segment> out{line(start.point + thickness * start.normal(), start.point)};
  for (const Segment& s : segments(edge)) out.push_back(s);
  out.push_back(line(end.point, end.point + thickness * end.normal()));
  return out;
}

// Edges where pieces meet are left out of the second one.
std::vector<Segment> upper_edges(const PressPlan& plan, double z) {
  std::vector<Segment> out;
  for (const Body* body : half_at(plan, z, Group::upper)) {
    const std::size_t before = out.size();
    for (const Segment& s : outline_of(plan, *body))
      if (std::none_of(out.begin(), out.begin() + static_cast<std::ptrdiff_t>(before),
                       [&](const Segment& other) { return along(s, other); }))
        out.push_back(s);
  }
  for (const Segment& s : lifted_edge(lifted_layers(plan))) out.push_back(s);
  return out;
}

bool opens(const PressPlan& plan) { return plan.opening.norm() > kSamePoint; }

}  // namespace

Box2 open_box(const PressPlan& plan, double z) {
  Box2 all;
  if (!opens(plan)) return all;
  for (const Segment& s : upper_edges(plan, z)) all.add(box(moved(s, plan.opening)));
  return all;
}

void add_open_half(Drawing& drawing, const PressPlan& plan, double z, const View& view) {
  if (!opens(plan)) return;
  for (const Segment& s : upper_edges(plan, z)) drawing.add(pens::kOpen, view.paper(moved(s, plan.opening)));
}

}  // namespace lamwright::drawing
