#include "exporters/plots/traced.hpp"

#include "exporters/drawing/seen_points.hpp"

namespace lamwright::plots {

drawing::Path traced(const std::vector<Vec2>& points) {
  const std::vector<Vec2> kept = drawing::seen_points(points);
  drawing::Path path;
  for (std::size_t i = 1; i < kept.size(); ++i) path.segments.push_back(line(kept[i - 1], kept[i]));
  return path;
}

drawing::Path filled(const std::vector<Vec2>& points, const std::string& fill) {
  const std::vector<Vec2> kept = drawing::seen_loop(points);
  return kept.size() < 3 ? drawing::Path{} : drawing::polygon(kept, fill);
}

}  // namespace lamwright::plots
