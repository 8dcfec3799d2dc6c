#include "exporters/plots/pressure_map_plot.hpp"

#include "exporters/drawing/contour.hpp"
#include "exporters/drawing/seen_points.hpp"
#include "exporters/plots/axes.hpp"
#include "exporters/plots/extremes.hpp"
#include "exporters/plots/glue_band.hpp"
#include "exporters/plots/heat_scale.hpp"
#include "exporters/plots/legend.hpp"
#include "exporters/plots/outer_runs.hpp"
#include "exporters/plots/plot_pens.hpp"
#include "exporters/plots/traced.hpp"

namespace lamwright::plots {
namespace {

using drawing::Drawing;

constexpr double kHeight = 56;      // of the field
constexpr double kScaleWidth = 34;  // right of it
constexpr double kScaleFrom = 3;

void add_bands(Drawing& drawing, const Field& field, const PressureMap& map, const HeatScale& scale) {
  const drawing::Grid grid{map.girth, map.width, map.value};
  for (int i = 0; i < scale.count(); ++i) {
    drawing::Area area{{}, scale.tint(i)};
    for (std::vector<Vec2>& loop : drawing::loops_above(grid, scale.bound(i))) {
      for (Vec2& p : loop) p = field.at(p.x(), p.y());
      drawing::Path path = filled(loop, {});
      if (!path.segments.empty()) area.loops.push_back(std::move(path));
    }
    if (!area.loops.empty()) drawing.add(pens::kFill, std::move(area));
  }
}

// Across the map; where they stand too close to leave its tints alone, at its ends only.
void add_formers(Drawing& drawing, const Field& field, const PressPlan& plan) {
  constexpr double kClose = 2.5, kEnd = 2;
  const double left = field.box.low.x(), right = field.box.high.x();
  const bool close =
      plan.sections.size() > 1 && field.y(plan.sections[1].z) - field.y(plan.sections[0].z) < kClose;
  for (const Section& section : plan.sections) {
    const double y = field.y(section.z);
    drawing.add(pens::kFormer, line({left, y}, {close ? left + kEnd : right, y}));
    if (close) drawing.add(pens::kFormer, line({right - kEnd, y}, {right, y}));
  }
}

void add_side_trim(Drawing& drawing, const Field& field, const PressPlan& plan) {
  const double trim = plan.panel.trim;
  if (trim <= 0) return;
  for (const double z : {trim, plan.panel.blank_width() - trim})
    drawing.add(pens::kTrim, line(field.at(field.left, z), field.at(field.right, z)));
}

std::vector<Sample> samples(const ExportInput& input, const HeatScale& scale, const Reported& reported) {
  std::vector<Sample> out{{glue_text(input.job.layup.glue_row, scale.top(), reported), pens::kBracket},
                          {"former", pens::kFormer},
                          {"end of line or bend", pens::kJoint}};
  if (input.plan.panel.trim > 0) out.push_back({"trim line", pens::kTrim});
  return out;
}

void add_scale_title(Drawing& drawing, const Field& field, const std::string& title) {
  const Vec2 at{kPlotWidth - 1, field.box.high.y() + kTitleAbove};
  drawing.add(pens::kText, drawing::Text{at, title, kPlotText, drawing::Anchor::right});
}

void add_frame(Drawing& drawing, const Field& field) {
  drawing.add(pens::kAxis, drawing::rectangle(field.box));
}

}  // namespace

std::optional<Drawing> pressure_map_plot(const ExportInput& input, const Reported& reported) {
  if (!input.figures.pressure) return std::nullopt;
  const PressureMap& map = *input.figures.pressure;
  const PressPlan& plan = input.plan;
  const AxisUnit unit = pressure_unit(reported);
  const HeatScale scale(map.greatest, unit);
  const Legend legend(samples(input, scale, reported));
  const Vec2 corner{kLeftOfField, legend.height() + kBelowField};
  const Vec2 size{kPlotWidth - kLeftOfField - kScaleWidth, kHeight};
  const double girth = map.girth.back(), width = plan.panel.blank_width();
  const Field field{{corner, corner + size}, 0, girth, 0, width};
  Drawing drawing("pressure map", {kPlotWidth, field.box.high.y() + kAboveField}, plot_pens());
  add_bands(drawing, field, map, scale);
  add_formers(drawing, field, plan);
  add_outer_runs(drawing, field, plan);
  add_side_trim(drawing, field, plan);
  add_frame(drawing, field);
  add_axes(drawing, field, length_axis("girth of the outer face", girth, size.x(), kNumberRoom, reported),
           length_axis("width", width, size.y(), kNumberRoomUp, reported));
  add_extremes(drawing, field, plan, map, reported);
  const double from = field.box.high.x() + kScaleFrom;
  scale.add(drawing, {{from, field.box.low.y()}, {kPlotWidth, field.box.high.y()}}, input.job.layup.glue_row);
  add_scale_title(drawing, field, "pressure, " + unit.name);
  legend.add(drawing, legend.height());
  return drawing;
}

}  // namespace lamwright::plots
