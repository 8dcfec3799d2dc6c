#include "exporters/plots/springback_plot.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/laid_over.hpp"
#include "exporters/drawing/one_two_five.hpp"
#include "exporters/drawing/springback_sheet.hpp"
#include "exporters/plots/face_text.hpp"
#include "exporters/plots/legend.hpp"
#include "exporters/plots/plot_pens.hpp"
#include "exporters/plots/springback_detail.hpp"
#include "exporters/plots/ticks.hpp"
#include "shared/number.hpp"

namespace lamwright::plots {
namespace {

using drawing::Anchor;
using drawing::Drawing;
using drawing::LaidOver;
using drawing::Text;
using drawing::View;

constexpr double kEdge = 3;                       // round the lines
constexpr double kHighest = 66;                   // of the lines
constexpr double kDetailRoom = kDetailSize + 20;  // with its words
constexpr double kBarRoom = 8;

View view_for(const LaidOver& lines, double width, double floor) {
  const Box2 box = lines.box();
  const double scale = std::min(width / box.size().x(), kHighest / box.size().y());
  const Vec2 spare(width - scale * box.size().x(), 0);
  return {scale, Vec2(kEdge, floor) + spare / 2 - scale * box.low};
}

// A round length to measure by, at most a quarter of the plot.
void add_bar(Drawing& drawing, double scale, double y, const Reported& reported) {
  constexpr double kEnd = 1.2, kMost = kPlotWidth / 4;
  const AxisUnit unit = length_unit(reported, kMost / scale);
  const double length = std::max(unit.least, drawing::one_two_five_below(kMost / scale / unit.size));
  const double from = kEdge, to = from + scale * length * unit.size;
  drawing.add(pens::kAxis, line({from, y}, {to, y}));
  for (const double x : {from, to}) drawing.add(pens::kAxis, line({x, y - kEnd}, {x, y + kEnd}));
  drawing.add(pens::kText,
              Text{{to + 1.5, y - kPlotText / 2}, number(length, 6) + " " + unit.name, kPlotText});
}

std::vector<std::string> words(const Panel& panel, const LaidOver& lines, const Reported& reported) {
  const auto at = [&](const drawing::Moved& moved) { return reported.length(moved.distance()); };
  const double share = panel.springback.share;
  return {"curvature " + std::string(share > 0 ? "lost" : "gained") +
              " on release: " + number(100 * std::abs(share), 1) + " %",
          "apart at the left end " + at(lines.left()) + ", at the right end " + at(lines.right())};
}

}  // namespace

std::optional<Drawing> springback_plot(const ExportInput& input, const Reported& reported) {
  const Panel& panel = input.plan.panel;
  if (!drawing::springs_back(panel)) return std::nullopt;
  const LaidOver lines(panel);
  const Legend legend(
      {{face_text(panel) + " as pressed", pens::kFirst}, {face_text(panel) + " as released", pens::kSecond}});
  const std::vector<std::string> rows = words(panel, lines, reported);
  const double floor = legend.height() + kPlotRow * double(rows.size()) + kBarRoom + kEdge;
  const double wide = kPlotWidth - 2 * kEdge, narrow = wide - kDetailRoom;
  const bool detailed = enlargement(lines, view_for(lines, wide, floor).scale) > 1;
  const View view = view_for(lines, detailed ? narrow : wide, floor);
  const double high = std::max(view.scale * lines.box().size().y(), detailed ? kDetailSize + kPlotRow : 0);
  Drawing drawing("springback", {kPlotWidth, floor + high + kEdge}, plot_pens());
  drawing.add(pens::kFirst, drawing::Path{view.paper(segments(lines.pressed())), false, {}});
  drawing.add(pens::kSecond, drawing::Path{view.paper(segments(lines.released())), false, {}});
  if (detailed)
    add_detail(drawing, lines, view, enlargement(lines, view.scale),
               {kPlotWidth - kDetailRoom, floor + high - kDetailSize});
  add_bar(drawing, view.scale, floor - kEdge - kBarRoom / 2, reported);
  double y = legend.height() + kPlotRow * double(rows.size());
  for (const std::string& row : rows) {
    y -= kPlotRow;
    drawing.add(pens::kText, Text{{1, y + 1}, row, kPlotText});
  }
  legend.add(drawing, legend.height());
  return drawing;
}

}  // namespace lamwright::plots
