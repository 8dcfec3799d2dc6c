#include "kernel/press/mould/mould.hpp"

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

Vec2 flat(const Frame& to, const Vec2& p) { return to.point({p.x(), p.y(), 0}).head<2>(); }

Segment moved(const Segment& segment, const Frame& to) {
  Segment out = segment;
  out.from = flat(to, segment.from);
  out.to = flat(to, segment.to);
  out.centre = flat(to, segment.centre);
  return out;
}

}  // namespace

double side_at(const std::vector<Vec2>& side, double y) {
  for (std::size_t i = 0; i + 1 < side.size(); ++i) {
    const Vec2 &a = side[i], &b = side[i + 1];
    if (y <= a.y() && y >= b.y() && a.y() - b.y() > kSamePoint)
      return a.x() + (b.x() - a.x()) * (a.y() - y) / (a.y() - b.y());
  }
  return y > side.front().y() ? side.front().x() : side.back().x();
}

PartSpec reframed(PartSpec spec, const Frame& to) {
  std::vector<Segment> loop;
  for (const Segment& s : spec.outline.segments()) loop.push_back(moved(s, to));
  spec.outline = Outline(std::move(loop), spec.name);
  for (BoreSpec& bore : spec.bores) {
    bore.at = to.point(bore.at);
    bore.axis = to.vector(bore.axis);
  }
  return spec;
}

Frame composed(const Frame& outer, const Frame& inner) {
  return {outer.point(inner.origin), outer.vector(inner.x), outer.vector(inner.y)};
}

}  // namespace lamwright
