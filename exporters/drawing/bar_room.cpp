#include "exporters/drawing/bar_room.hpp"

#include <algorithm>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kBar = 100;

bool free(const Clearance& sheet, const Operation& operation, double clear) {
  if (const auto* text = std::get_if<Text>(&operation.shape)) return sheet.free(*text, 1);
  return sheet.free(grown(box(std::get<Segment>(operation.shape)), clear));
}

}  // namespace

std::vector<Operation> size_bars(const Vec2& corner) {
  return {{layers::kCheck, line(corner, corner + Vec2(kBar, 0))},
          {layers::kCheck, line(corner, corner + Vec2(0, kBar))},
          {layers::kCheck, Text{corner + Vec2(2, 2), "100", kTextHeight}}};
}

std::optional<Vec2> free_corner(const Drawing& drawing, const BarSearch& search) {
  const Clearance sheet(drawing);
  const auto fits = [&](const Operation& operation) {
    const auto* bar = std::get_if<Segment>(&operation.shape);
    return (!bar || search.allowed(*bar)) && free(sheet, operation, search.clear);
  };
  const Vec2 last = drawing.size() - Vec2(kBar + search.edge, kBar + search.edge);
  for (double y = search.edge; y < last.y(); y += search.step)
    for (double x = search.edge; x < last.x(); x += search.step) {
      const std::vector<Operation> bars = size_bars({x, y});
      if (std::all_of(bars.begin(), bars.end(), fits)) return Vec2(x, y);
    }
  return std::nullopt;
}

}  // namespace lamwright::drawing
