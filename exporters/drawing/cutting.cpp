#include "exporters/drawing/cutting.hpp"

#include <algorithm>
#include <array>
#include <cmath>

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

// Where a level line runs inside an outline; asked along one level after the other.
class LevelStretches {
 public:
  explicit LevelStretches(const Outline& outline) : outline_(outline) {}

  // Points on the edge: either answer.
  bool hold(const Vec2& p) {
    if (p.y() != level_) ask(p.y());
    const auto next = std::upper_bound(ends_.begin(), ends_.end(), p.x());
    return next != ends_.begin() && next != ends_.end() &&
           inside_[static_cast<std::size_t>(next - ends_.begin()) - 1];
  }

 private:
  void ask(double level) {
    level_ = level;
    ends_.clear();
    inside_.clear();
    const Box2& box = outline_.box();
    const Segment across = line({box.low.x() - 1, level}, {box.high.x() + 1, level});
    for (const Segment& s : outline_.segments())
      for (const Vec2& p : crossings(across, s)) ends_.push_back(p.x());
    std::sort(ends_.begin(), ends_.end());
    for (std::size_t i = 0; i + 1 < ends_.size(); ++i)
      inside_.push_back(outline_.contains({(ends_[i] + ends_[i + 1]) / 2, level}));
  }

  const Outline& outline_;
  double level_ = NAN;
  std::vector<double> ends_;  // of the stretches, and whether each is inside
  std::vector<bool> inside_;
};

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
  LevelStretches inside(part.outline());
  const auto possible = [&](const Vec2& corner) { return inside.hold(corner + box.low); };
  const BarSearch search{.edge = kEdge, .step = 10, .clear = 2, .possible = possible, .allowed = allowed};
  if (const auto corner = bars_corner(laid_out(part.name(), box.size(), all), search))
    for (Operation& bar : corner_bars(*corner)) all.push_back(std::move(bar));
  return stroked(laid_out(part.name(), box.size(), all));
}

}  // namespace lamwright::drawing
