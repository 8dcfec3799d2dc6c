// Plots of jobs, and what can be read off them.
#pragma once
#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "exporters/plots/curvature_plot.hpp"
#include "exporters/plots/plot_pens.hpp"
#include "exporters/plots/pressure_map_plot.hpp"
#include "exporters/plots/pressure_plot.hpp"
#include "exporters/plots/springback_plot.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/support/jobs.hpp"

namespace lamwright::test {

using Plot = std::optional<drawing::Drawing> (*)(const ExportInput&, const Reported&);

inline std::optional<drawing::Drawing> plotted(const Evaluation& result, Plot plot,
                                               LengthUnit unit = LengthUnit::mm) {
  Progress quiet;
  return plot({*result.job, *result.plan, result.findings, quiet, result.figures}, Reported(unit));
}

// Upright axis from its numbers: values in the plot's own unit at heights on paper.
struct UprightAxis {
  double zero = 0;  // height of 0
  double one = 0;   // height of 1 above it
  double value(double y) const { return (y - zero) / one; }
};
inline UprightAxis upright_axis(const drawing::Drawing& plot) {
  std::vector<std::pair<double, double>> numbers;  // value, height
  for (const drawing::Text& text : texts(plot)) {
    const bool number = text.text.find_first_not_of("-.0123456789") == std::string::npos;
    if (text.anchor == drawing::Anchor::right && number)
      numbers.push_back({std::stod(text.text), text.at.y() + text.height / 2});
  }
  if (numbers.size() < 2) throw std::runtime_error("no axis");
  const auto [v0, y0] = numbers.front();
  const auto [v1, y1] = numbers.back();
  const double one = (y1 - y0) / (v1 - v0);
  return {y0 - v0 * one, one};
}

// Of the curve drawn with a pen; the sample in the legend is no path.
inline std::vector<Segment> curve_of(const drawing::Drawing& plot, const char* pen) {
  std::vector<Segment> out;
  for (const drawing::Item& item : plot.items())
    if (const auto* path = std::get_if<drawing::Path>(&item.shape))
      if (plot.pens()[item.pen].name == pen)
        out.insert(out.end(), path->segments.begin(), path->segments.end());
  return out;
}

// What is wrong with a plot, in words. Faint grid lines may run under texts, and so may anything under the
// plates of a map's values.
inline std::vector<std::string> plot_faults(const drawing::Drawing& plot, long& seen) {
  using namespace drawing;
  std::vector<std::string> out;
  const Box2 sheet{{0, 0}, plot.size()};
  for (const Item& item : plot.items())
    for (const Segment& s : strokes(item.shape)) {
      ++seen;
      if (!within(lamwright::box(s), grown(sheet, 1e-9))) out.push_back("a line leaves the sheet");
    }
  const auto all = texts(plot);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Box2 box = text_box(all[i]);
    if (all[i].height < 2.8) out.push_back(all[i].text + ": too small");
    if (!within(box, sheet)) out.push_back(all[i].text + ": leaves the sheet");
    for (std::size_t j = 0; j < i; ++j, ++seen)
      if (overlap(grown(box, -0.3), text_box(all[j]))) out.push_back(all[i].text + ": over " + all[j].text);
    const bool plated = std::any_of(plot.items().begin(), plot.items().end(), [&](const Item& item) {
      const auto* path = std::get_if<Path>(&item.shape);
      return path && plot.pens()[item.pen].name == plots::pens::kPlate &&
             within(box, box_of_strokes(path->segments));
    });
    for (const Item& item : plot.items()) {
      const Pen& pen = plot.pens()[item.pen];
      if (plated || pen.width <= 0 || pen.name == plots::pens::kGrid) continue;
      for (const Segment& s : strokes(item.shape)) {
        ++seen;
        if (touches(s, grown(box, -0.9))) out.push_back(all[i].text + ": under a line of " + pen.name);
      }
    }
  }
  return out;
}

}  // namespace lamwright::test
