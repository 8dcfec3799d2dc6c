#include "exporters/drawing/part_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

std::vector<Vec2> hull(std::vector<Vec2> points) {
  std::sort(points.begin(), points.end(),
            [](const Vec2& a, const Vec2& b) { return a.x() < b.x() || (a.x() == b.x() && a.y() < b.y()); });
  std::vector<Vec2> out;
  for (int pass = 0; pass < 2; ++pass) {
    const std::size_t start = out.size();
    for (const Vec2& p : points) {
      while (out.size() >= start + 2 &&
             cross(out.back() - out[out.size() - 2], p - out.back()) <= kSamePoint * kSamePoint)
        out.pop_back();
      out.push_back(p);
    }
    out.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return out;
}

std::vector<Vec2> corners(const Part& part, const Seen& seen) {
  const Box2 flat = part.outline().box();
  std::vector<Vec2> out;
  for (const double u : {flat.low.x(), flat.high.x()})
    for (const double v : {flat.low.y(), flat.high.y()})
      for (const double w : {0.0, part.thickness()}) out.push_back(seen.point(part.sheet().point({u, v, w})));
  return out;
}

void add_side_bore(Drawing& drawing, const Bore& bore, const Seen& seen, const View& view,
                   const char* walls) {
  constexpr double kLeastDrawn = 1;  // between walls, mm on paper: nearer ones would run together
  constexpr double kAxisPast = 1.5;
  const Vec2 mouth = view.paper(seen.point(bore.at)), axis = seen.vector(bore.axis).normalized(),
             side = left_of(axis);
  const auto wall = [&](double radius, double from, double to) {
    const double r = view.scale * radius, a = view.scale * from, b = view.scale * to;
    for (const double s : {-r, r})
      drawing.add(walls, line(mouth + a * axis + s * side, mouth + b * axis + s * side));
  };
  const auto floor = [&](double inner, double outer, double at) {
    const Vec2 p = mouth + view.scale * at * axis;
    if (inner <= 0)
      drawing.add(walls, line(p - view.scale * outer * side, p + view.scale * outer * side));
    else
      for (const double s : {-1.0, 1.0})
        drawing.add(walls, line(p + s * view.scale * inner * side, p + s * view.scale * outer * side));
  };
  const double top = bore.counterbore ? bore.counterbore->depth : 0;
  const bool narrow = view.scale * bore.diameter < kLeastDrawn;
  if (bore.counterbore) {
    wall(bore.counterbore->diameter / 2, 0, top);
    floor(narrow ? 0 : bore.diameter / 2, bore.counterbore->diameter / 2, top);
  }
  if (!narrow) {
    wall(bore.diameter / 2, top, bore.length);
    if (bore.depth) floor(0, bore.diameter / 2, bore.length);
  }
  const Vec2 end = mouth + view.scale * bore.length * axis;
  if (narrow)
    drawing.add(walls, line(mouth + view.scale * top * axis, end));
  else
    drawing.add(pens::kCentre, line(mouth - kAxisPast * axis, end + kAxisPast * axis));
}

void add_end_bore(Drawing& drawing, const Bore& bore, const Seen& seen, const View& view) {
  const Vec2 middle = view.paper(seen.point(bore.at));
  const bool facing =
      seen.along.toward_viewer().dot(seen.placed.vector(bore.axis)) < 0;  // its mouth is on this side
  const double radius = view.scale * bore.diameter / 2;
  drawing.add(facing || !bore.depth ? pens::kBore : pens::kHidden, Circle{middle, radius, {}});
  double widest = radius;
  if (bore.counterbore) {
    widest = view.scale * bore.counterbore->diameter / 2;
    drawing.add(facing ? pens::kBore : pens::kHidden, Circle{middle, widest, {}});
  }
  if (widest > 1) centre_cross(drawing, middle, widest - 0.5);
}

}  // namespace

std::vector<Segment> silhouette(const Part& part, const Seen& seen) {
  const Vec2 u = seen.vector(part.sheet().x), v = seen.vector(part.sheet().y);
  const double facing = cross(u, v);  // 1 seen from the far face, -1 from the near face, 0 edge on
  if (std::abs(std::abs(facing) - 1) > kTangent) return polygon(hull(corners(part, seen))).segments;
  const auto flat = [&](const Vec2& p) { return seen.point(part.sheet().point({p.x(), p.y(), 0})); };
  std::vector<Segment> out;
  for (const Segment& s : part.outline().segments())
    out.push_back(s.straight() ? line(flat(s.from), flat(s.to))
                               : Segment{flat(s.from), flat(s.to), facing > 0 ? s.turn : -s.turn,
                                         flat(s.centre), s.radius});
  return out;
}

Box2 box_of(const std::vector<Segment>& loop) {
  Box2 all;
  for (const Segment& s : loop) all.add(box(s));
  return all;
}

Vec2 highest(const std::vector<Segment>& loop) {
  Vec2 top = loop.front().from;
  for (const Segment& s : loop) {
    if (s.from.y() > top.y()) top = s.from;
    const Vec2 crown = s.centre + Vec2(0, s.radius);
    if (!s.straight() && crown.y() > top.y() + kSamePoint && distance(s, crown) < kSamePoint) top = crown;
  }
  return top;
}

void add_bores(Drawing& drawing, const Part& part, const Seen& seen, const View& view, const char* walls) {
  for (const Bore& bore : part.bores()) {
    if (seen.vector(bore.axis).norm() < kTangent)
      add_end_bore(drawing, bore, seen, view);
    else
      add_side_bore(drawing, bore, seen, view, walls);
  }
}

std::string bore_text(const Bore& bore) {
  std::string text = diameter_text(bore.diameter);
  if (bore.depth) text += " x " + size_text(*bore.depth) + " deep";
  if (bore.counterbore)
    text += ", counterbore \u2334" + diameter_text(bore.counterbore->diameter) + " \u21A7" +
            size_text(bore.counterbore->depth);
  return text;
}

}  // namespace lamwright::drawing
