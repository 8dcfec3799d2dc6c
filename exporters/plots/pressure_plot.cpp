#include "exporters/plots/pressure_plot.hpp"

#include <algorithm>

#include "exporters/drawing/pressure_map_view.hpp"
#include "exporters/plots/axes.hpp"
#include "exporters/plots/glue_band.hpp"
#include "exporters/plots/legend.hpp"
#include "exporters/plots/outer_runs.hpp"
#include "exporters/plots/plot_pens.hpp"
#include "exporters/plots/traced.hpp"

namespace lamwright::plots {
namespace {

using drawing::Drawing;

constexpr double kHeight = 46;  // of the field
constexpr int kSteps = 5;

// Least or greatest over the width at a station.
double extreme(const PressureMap& map, std::size_t i, bool greatest) {
  const auto [least, most] = std::minmax_element(map.value[i].begin(), map.value[i].end());
  return greatest ? *most : *least;
}

std::vector<Vec2> band(const PressureMap& map, const Field& field) {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < map.girth.size(); ++i)
    out.push_back(field.at(map.girth[i], extreme(map, i, false)));
  for (std::size_t i = map.girth.size(); i-- > 0;)
    out.push_back(field.at(map.girth[i], extreme(map, i, true)));
  return out;
}

std::vector<Vec2> mean(const PressureMap& map, const Field& field) {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < map.girth.size(); ++i) out.push_back(field.at(map.girth[i], map.along[i]));
  return out;
}

std::vector<Sample> samples(const ExportInput& input, double top, const Reported& reported) {
  std::vector<Sample> out{{"mean over the width", pens::kFirst},
                          {"least to greatest over the width", pens::kFill, tints::kSpread},
                          {glue_text(input.job.layup.glue_row, top, reported), pens::kFill, tints::kGlue},
                          {"end of line or bend", pens::kJoint}};
  if (input.plan.panel.trim > 0) out.push_back({"trim line", pens::kTrim});
  return out;
}

}  // namespace

std::optional<Drawing> pressure_plot(const ExportInput& input, const Reported& reported) {
  if (!input.figures.pressure) return std::nullopt;
  const PressureMap& map = *input.figures.pressure;
  const Glue& glue = input.job.layup.glue_row;
  const AxisUnit unit = pressure_unit(reported);
  const auto up = ticks_around(0, shown_pressure(map.greatest, glue), kSteps, unit);
  const Legend legend(samples(input, up.back().at, reported));
  const Vec2 corner{kLeftOfField, legend.height() + kBelowField};
  const double length = kPlotWidth - kLeftOfField - kRightOfField, girth = map.girth.back();
  const Field field{{corner, corner + Vec2(length, kHeight)}, 0, girth, 0, up.back().at};
  Drawing drawing("pressure along the girth", {kPlotWidth, field.box.high.y() + kAboveField}, plot_pens());
  add_glue_band(drawing, field, glue);
  drawing.add(pens::kFill, filled(band(map, field), tints::kSpread));
  add_outer_runs(drawing, field, input.plan);
  drawing.add(pens::kFirst, traced(mean(map, field)));
  add_axes(drawing, field, length_axis("girth of the outer face", girth, length, kNumberRoom, reported),
           {up, "pressure, " + unit.name});
  add_glue_names(drawing, field, glue, reported);
  add_grid(drawing, field, up);
  legend.add(drawing, legend.height());
  return drawing;
}

}  // namespace lamwright::plots
