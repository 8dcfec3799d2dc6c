#include "exporters/drawing/cutting.hpp"

#include <algorithm>
#include <array>

#include "exporters/drawing/check_bars.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kEdge = 6;

bool on_board(const Outline& outline, const Segment& bar) {
  constexpr std::array<double, 5> kShares{0, 0.25, 0.5, 0.75, 1};
  return std::all_of(kShares.begin(), kShares.end(), [&](double share) {
    const Vec2 p = bar.point(share);
    return outline.contains(p) && outline.distance(p) >= kEdge - 1;
  });
}

}  // namespace

std::vector<Operation> chosen(std::vector<Operation> operations, const CuttingOptions& options) {
  if (!options.labels)
    std::erase_if(operations, [](const Operation& operation) { return operation.layer == layers::kLabel; });
  return operations;
}

CuttingDrawing cutting_drawing(const Part& part, const CuttingOptions& options) {
  const Box2 box = part.outline().box();
  const Placing placing{0, -box.low};
  std::vector<Operation> all = chosen(operations(part, placing), options);
  const auto allowed = [&](const Segment& bar) {
    return on_board(part.outline(), Placing{0, box.low}.segment(bar));
  };
  const BarSearch search{.edge = kEdge, .step = 10, .clear = 2, .allowed = allowed};
  if (const auto corner = bars_corner(laid_out(part.name(), box.size(), all), search))
    for (Operation& bar : corner_bars(*corner)) all.push_back(std::move(bar));
  return stroked(laid_out(part.name(), box.size(), all));
}

}  // namespace lamwright::drawing
