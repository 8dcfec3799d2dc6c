#include "kernel/profile/fit/outcome.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"

namespace lamwright::fitting {
namespace {

// The path from abreast of the first point, or the known start, to abreast of the last or the known end.
Profile cut(const Path& path, const FitSpec& spec, const CleanPoints& points) {
  Path out = path;
  if (!spec.start) {
    Run& first = out.runs.front();
    const double s = station_on(seen_from(out.start, out.start.tangent(), points.at.front()), first);
    out.start = walked(out.start, first.curvature, s);
    first.length -= s;
  }
  const Pose from = joints(out)[out.runs.size() - 1];
  Run& last = out.runs.back();
  last.length =
      station_on(seen_from(from, from.tangent(), spec.end ? spec.end->point : points.at.back()), last);
  return {out.start, out.runs};
}

std::vector<RunAccuracy> accuracy_of(const Fitted& fitted, const Ties& ties, double sigma) {
  if (!std::isfinite(sigma))
    return std::vector<RunAccuracy>(fitted.fit.path.runs.size(), {INFINITY, INFINITY});
  const Spread spread = spread_of(fitted.fit, ties, fitted.straight);
  std::vector<RunAccuracy> out;
  for (std::size_t i = 0; i < fitted.fit.path.runs.size(); ++i) {
    const double k = fitted.fit.path.runs[i].curvature;
    const double radius = k == 0 ? INFINITY : sigma * std::sqrt(std::max(0.0, spread.curvature[i])) / (k * k);
    out.push_back({sigma * std::sqrt(std::max(0.0, spread.length[i])), radius});
  }
  return out;
}

void measure_residuals(FitResult& result, const std::vector<Vec2>& points, const Path& path) {
  result.residuals = distances(path, points);
  double squares = 0;
  for (const double r : result.residuals) {
    squares += r * r;
    result.greatest = std::max(result.greatest, std::abs(r));
  }
  result.rms = std::sqrt(squares / static_cast<double>(points.size()));
}

constexpr double kMisfit = 1.25;  // more than chance adds to the residuals of any but the fewest points

// What the accuracy of runs stands on: noise, or more where the runs leave more. Infinite where no point is
// to spare.
double deviation(const FitSpec& spec, const Fitted& fitted, double noise) {
  const Blocks& blocks = fitted.fit.blocks;
  const double freedom = blocks.weight - 2 * static_cast<double>(fitted.fit.path.runs.size()) - 1;
  const double scatter = freedom >= 1 ? std::sqrt(blocks.squares / freedom) : 0;
  if (freedom >= 1) return scatter > kMisfit * noise ? scatter : noise;
  return spec.noise ? noise : INFINITY;
}

std::string kind_name(const FitSpec& spec) { return spec.kind == FitKind::arc ? "the arc" : "the arcs"; }

void add_misses(std::vector<std::string>& notes, const FitSpec& spec, double greatest) {
  if (spec.kind == FitKind::runs || greatest <= spec.tolerance) return;
  notes.push_back(kind_name(spec) + (spec.kind == FitKind::arc ? " leaves" : " leave") + " points by up to " +
                  number(greatest) + ", more than the tolerance of " + number(spec.tolerance) +
                  "; fit = \"runs\" would follow them");
}

// Runs of which the points tell little.
void add_thin_runs(std::vector<std::string>& notes, const FitResult& result) {
  for (std::size_t i = 0; i < result.accuracy.size(); ++i) {
    const double length = result.profile.runs()[i].length, known_to = result.accuracy[i].length;
    if (std::isfinite(known_to) && known_to > length / 2)
      notes.push_back(run_name(result.profile, i) + " is " + number(length, 1) + " long and known to " +
                      number(known_to, 1) + " only: measure more points there");
  }
}

void add_lost_ends(std::vector<std::string>& notes, const FitSpec& spec, const FitResult& result) {
  for (const std::size_t i : result.suspects) {
    const bool first = i == 0 && !spec.start, last = i + 1 == spec.points.size() && !spec.end;
    if (first || last)
      notes.push_back(std::string("the ") + (first ? "first" : "last") +
                      " point was left out, so where the curve " + (first ? "begins" : "ends") +
                      " is not known");
  }
}

// The greatest residual of the points that are no suspects.
double greatest_kept(const FitResult& result) {
  double out = 0;
  for (std::size_t i = 0; i < result.residuals.size(); ++i)
    if (std::find(result.suspects.begin(), result.suspects.end(), i) == result.suspects.end())
      out = std::max(out, std::abs(result.residuals[i]));
  return out;
}

constexpr double kFewNoises = 3;  // a tolerance of fewer is often broken by noise alone

std::vector<std::string> notes_of(const FitSpec& spec, const FitResult& result, bool told) {
  std::vector<std::string> notes;
  if (result.merged > 0)
    notes.push_back(counted(static_cast<long>(result.merged), "point") + " left out that repeat" +
                    (result.merged == 1 ? "s" : "") + " the one before within 0.001");
  if (result.tolerance <= spec.tolerance && spec.kind != FitKind::arc && told &&
      spec.tolerance < kFewNoises * result.noise)
    notes.push_back("a tolerance of " + number(spec.tolerance) +
                    " is less than three times the scatter of the points, " + number(result.noise) +
                    " (standard deviation)");
  if (result.tolerance > spec.tolerance)
    notes.push_back("the points scatter by " + number(result.noise) +
                    " (standard deviation), too much for a tolerance of " + number(spec.tolerance) +
                    ": kept within " + number(result.tolerance));
  for (const std::size_t i : result.suspects)
    notes.push_back("point " + std::to_string(i + 1) + " at " + point_text(spec.points[i]) + " lies " +
                    number(std::abs(result.residuals[i])) +
                    " off and was left out of the fit; measure it again");
  add_misses(notes, spec, greatest_kept(result));
  add_thin_runs(notes, result);
  add_lost_ends(notes, spec, result);
  return notes;
}

}  // namespace

FitResult outcome(const FitSpec& spec, const Measured& measured, const Fitted& fitted, double noise) {
  FitResult result{cut(fitted.fit.path, spec, measured.points), {}, {}, 0, 0, noise, 0, 0, {}, {}};
  result.accuracy = accuracy_of(fitted, {spec.start, spec.end}, deviation(spec, fitted, noise));
  measure_residuals(result, spec.points, fitted.fit.path);
  result.merged = measured.points.merged;
  for (const std::size_t i : fitted.left_out) result.suspects.push_back(measured.points.index[i]);
  result.tolerance = greatest_kept(result) <= spec.tolerance ? spec.tolerance : measured.tolerance;
  result.notes = notes_of(spec, result, measured.told);
  return result;
}

}  // namespace lamwright::fitting
