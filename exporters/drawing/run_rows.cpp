#include "exporters/drawing/run_rows.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/text.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kRow = 4.5;

Table empty_table() {
  return {{{"no.", 0}, {"run", 0, Anchor::left}, {"length", 0}, {"radius", 0}, {"turn", 0}}, {}, kRow};
}

// A deviation below a tenth is told to a hundredth, so that a good one is not read as none.
std::string deviation_text(double deviation) {
  if (deviation < 0.01) return "0.01";
  return deviation < 0.095 ? number(deviation, 2) : number(deviation, 1);
}

// Kept points beyond one for each unknown: where and how the runs begin, their curvatures, the joints
// between.
bool points_to_spare(const FitResult& fit) {
  const auto& runs = fit.profile.runs();
  const auto bends = std::count_if(runs.begin(), runs.end(), [](const Run& run) { return !run.straight(); });
  return fit.residuals.size() > fit.merged + fit.suspects.size() + runs.size() + 1 + std::size_t(bends);
}

// Points without any noise may tell a size exactly, but only when there are more of them than it takes.
bool known(const FitResult& fit, double deviation) {
  return std::isfinite(deviation) && (deviation > 0 || (fit.noise == 0 && points_to_spare(fit)));
}

std::string with_deviation(const FitResult& fit, double value, double deviation) {
  const std::string text = size_text(value);
  if (!known(fit, deviation)) return text + " ± not known";
  if (deviation >= value) return text + ", hardly known";
  return text + " ± " + deviation_text(deviation);
}

}  // namespace

std::string run_title(const Profile& profile, std::size_t i) {
  return run_name(profile, i) + (profile.runs()[i].curvature < 0 ? ", hollow" : "");
}

std::string radius_text(const Run& run) {
  return run.straight() ? "-" : size_text(1 / std::abs(run.curvature));
}

std::string turn_text(double radians) { return number(degrees(radians), 2) + "°"; }

Table run_table(const Profile& profile) {
  Table table = empty_table();
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    const Run& run = profile.runs()[i];
    table.rows.push_back({std::to_string(i + 1), run_title(profile, i), size_text(run.length),
                          radius_text(run), run.straight() ? "-" : turn_text(run.turn())});
  }
  return as_wide_as_needed(std::move(table));
}

Table accuracy_table(const FitResult& fit) {
  const auto& runs = fit.profile.runs();
  ensure(fit.accuracy.size() == runs.size(), "every run has its accuracy");
  Table table = run_table(fit.profile);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    auto& row = table.rows[i];
    row[2] = with_deviation(fit, runs[i].length, fit.accuracy[i].length);
    if (!runs[i].straight())
      row[3] = with_deviation(fit, 1 / std::abs(runs[i].curvature), fit.accuracy[i].radius);
  }
  return as_wide_as_needed(std::move(table));
}

Table as_wide_as_needed(Table table) {
  constexpr double kBeside = 3;  // for what a table keeps clear in a cell
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    double width = text_width(table.columns[c].head, kSmallHeight);
    for (const auto& row : table.rows) width = std::max(width, text_width(row[c], kSmallHeight));
    table.columns[c].width = width + kBeside;
  }
  return table;
}

std::size_t folds_within(const Table& table, double width) {
  return std::max<std::size_t>(1, static_cast<std::size_t>(width / table_size(table).x()));
}

}  // namespace lamwright::drawing
