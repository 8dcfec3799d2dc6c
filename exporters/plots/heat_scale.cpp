#include "exporters/plots/heat_scale.hpp"

#include <algorithm>

#include "exporters/plots/heat.hpp"
#include "exporters/plots/plot_pens.hpp"
#include "shared/number.hpp"

namespace lamwright::plots {
namespace {

using drawing::Drawing;
using drawing::Text;

constexpr double kBracket = 4.5;  // left of the boxes
constexpr double kBoxWidth = 6;
constexpr double kToText = 1.5;

}  // namespace

HeatScale::HeatScale(double greatest, const AxisUnit& unit) : unit_(unit), steps_(greatest / unit.size) {}

std::string HeatScale::tint(int i) const { return heat(i, count()); }

double HeatScale::height(double pressure, const Box2& box) const {
  const double one = box.size().y() / (count() + 1);
  return box.low.y() + one * (count() == 0 ? 1 : 1 + pressure / bound(1));
}

void HeatScale::add(Drawing& drawing, const Box2& box, const Glue& glue) const {
  const double left = box.low.x() + kBracket, right = left + kBoxWidth;
  const auto level = [&](int i) { return count() == 0 ? height(0, box) : height(bound(i), box); };
  const auto text = [&](double y, const std::string& words) {
    drawing.add(pens::kText, Text{{right + kToText, y - kPlotText / 2}, words, kPlotText});
  };
  drawing.add(pens::kFormer, drawing::rectangle({{left, box.low.y()}, {right, level(0)}}));
  text((box.low.y() + level(0)) / 2, "none");
  for (int i = 0; i < count(); ++i) {
    const Box2 one{{left, level(i)}, {right, level(i + 1)}};
    drawing.add(pens::kFill, drawing::rectangle(one, tint(i)));
    drawing.add(pens::kFormer, drawing::rectangle(one));
    text(level(i + 1), number(steps_.bound(i + 1), 6));
  }
  add_glue(drawing, box, glue);
}

// With a foot at each bound that the scale reaches.
void HeatScale::add_glue(Drawing& drawing, const Box2& box, const Glue& glue) const {
  if (count() == 0 || glue.pressure_low >= top()) return;
  const double left = box.low.x() + 1, right = box.low.x() + kBracket;
  const double low = height(glue.pressure_low, box), high = height(std::min(glue.pressure_high, top()), box);
  drawing.add(pens::kBracket, line({left, low}, {left, high}));
  drawing.add(pens::kBracket, line({left, low}, {right, low}));
  if (glue.pressure_high <= top()) drawing.add(pens::kBracket, line({left, high}, {right, high}));
}

}  // namespace lamwright::plots
