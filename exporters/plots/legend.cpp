#include "exporters/plots/legend.hpp"

#include "exporters/drawing/text.hpp"
#include "exporters/plots/plot_pens.hpp"

namespace lamwright::plots {
namespace {

constexpr double kLength = 8;  // of a sample
constexpr double kToText = 1.2, kBetween = 3.5;
constexpr double kTint = 3;  // height
constexpr double kEdge = 1;  // left and right of all

// `at` is the middle of its left edge.
drawing::Shape shape(const Sample& sample, const Vec2& at) {
  const Vec2 end = at + Vec2(kLength, 0), up(0, kTint / 2);
  if (sample.ring) return drawing::Circle{(at + end) / 2, kRing, tints::kPaper};
  if (!sample.fill.empty()) return drawing::rectangle({at - up, end + up}, sample.fill);
  return line(at, end);
}

}  // namespace

Legend::Legend(const std::vector<Sample>& samples) {
  double x = kEdge;
  int row = 0;
  for (const Sample& sample : samples) {
    const double width = kLength + kToText + drawing::text_width(sample.text, kPlotText);
    if (x > kEdge && x + width > kPlotWidth - kEdge) {
      x = kEdge;
      ++row;
    }
    placed_.push_back({sample, x, row});
    x += width + kBetween;
  }
}

double Legend::height() const { return placed_.empty() ? 0 : kPlotRow * (placed_.back().row + 1); }

void Legend::add(drawing::Drawing& drawing, double top) const {
  for (const auto& [sample, x, row] : placed_) {
    const double y = top - kPlotRow * (row + 0.5);
    drawing.add(sample.pen, shape(sample, {x, y}));
    drawing.add(pens::kText,
                drawing::Text{{x + kLength + kToText, y - kPlotText / 2}, sample.text, kPlotText});
  }
}

}  // namespace lamwright::plots
