#include "exporters/drawing/shape.hpp"

#include "shared/units.hpp"

namespace lamwright::drawing {

std::vector<Segment> strokes(const Shape& shape) {
  if (const auto* segment = std::get_if<Segment>(&shape)) return {*segment};
  if (const auto* path = std::get_if<Path>(&shape)) return path->segments;
  if (const auto* area = std::get_if<Area>(&shape)) {
    std::vector<Segment> all;
    for (const Path& loop : area->loops) all.insert(all.end(), loop.segments.begin(), loop.segments.end());
    return all;
  }
  if (const auto* circle = std::get_if<Circle>(&shape)) {
    const Vec2 r{circle->radius, 0};
    const Vec2 right = circle->centre + r, left = circle->centre - r;
    return {{right, left, kPi, circle->centre, circle->radius},
            {left, right, kPi, circle->centre, circle->radius}};
  }
  return {};
}

Path polygon(const std::vector<Vec2>& points, std::string fill) {
  Path path{{}, true, std::move(fill)};
  for (std::size_t i = 0; i < points.size(); ++i)
    path.segments.push_back(line(points[i], points[(i + 1) % points.size()]));
  return path;
}

Path rectangle(const Box2& box, std::string fill) {
  return polygon({box.low, {box.high.x(), box.low.y()}, box.high, {box.low.x(), box.high.y()}},
                 std::move(fill));
}

}  // namespace lamwright::drawing
