#include "kernel/press/two_part/axis.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::two_part {
namespace {

constexpr double kUpright = kPi / 2;

// A pull as a job would name it, still in the range of axes, with the figures that belong to that.
PullChoice named(const Profile& line, const PullChoice& pull, const Headings& range) {
  const auto axis = short_degrees(pull.axis, range, 2);
  if (!axis) return pull;
  const PullChoice on_axis = best_position(line, radians(*axis));
  for (const double step : {0.1, 0.01, 0.001}) {
    const PullChoice out = pull_choice(line, radians(*axis), std::round(on_axis.at / step) * step);
    if (out.presses() == pull.presses()) return out;
  }
  return pull;
}

// Pulls under which the upper half comes off, the chosen one first; one that is another's double is left out.
std::vector<NamedPull> compared(const Job& job, const Panel& panel, double axis) {
  const Profile& line = panel.pressed;
  const double at = job.press.pull.at, middle = bisector(line);
  const auto clear = axes_coming_off(panel, 0);
  std::string chosen = pull_name(job.press.pull);
  if (at != 0) chosen += ", at " + number(at, 1);
  std::vector<NamedPull> out{{chosen, pull_choice(line, axis, at)}};
  const auto add = [&](const std::string& name, double other) {
    for (const NamedPull& pull : out)
      if (std::abs(pull.choice.axis - other) < 1e-9 && pull.choice.at == 0) return;
    if (clear && other >= clear->least && other <= clear->greatest)
      out.push_back({name, pull_choice(line, other, 0)});
  };
  add("square-to-chord", 0);
  add("bisector", middle);
  return out;
}

}  // namespace

std::optional<Headings> axes_coming_off(const Panel& panel, double draft) {
  return clearing_axes(panel.pressed, kUpright - draft + kRightAngle);
}

std::optional<double> short_degrees(double axis, const Headings& range, int places) {
  for (; places <= 7; ++places) {
    const double step = std::pow(10, -places), near = std::round(degrees(axis) / step);
    for (const double d : {near * step, (near - 1) * step, (near + 1) * step})
      if (radians(d) >= range.least && radians(d) <= range.greatest) return d;
  }
  return std::nullopt;
}

std::optional<PullChoice> best_named(const Profile& line, const Headings& range) {
  const auto best = best_pull(line, range.least, range.greatest);
  if (!best) return std::nullopt;
  return named(line, *best, range);
}

double pull_axis(const PullSpec& pull, const Panel& panel) {
  switch (pull.kind) {
    case PullSpec::Kind::square_to_chord:
      return 0;
    case PullSpec::Kind::bisector:
      return bisector(panel.pressed);
    case PullSpec::Kind::angle:
      return pull.angle;
  }
  return 0;
}

std::string pull_name(const PullSpec& pull) {
  switch (pull.kind) {
    case PullSpec::Kind::square_to_chord:
      return "square-to-chord";
    case PullSpec::Kind::bisector:
      return "bisector";
    case PullSpec::Kind::angle:
      return number(degrees(pull.angle), 3) + " degrees";
  }
  return {};
}

Pull pull_of(const Job& job, const Panel& panel, const Profile& neutral) {
  const PullSpec& spec = job.press.pull;
  const double axis = pull_axis(spec, panel);
  const Vec2 middle = (neutral.start().point + neutral.end().point) / 2;
  Pull pull{.name = pull_name(spec),
            .axis = axis,
            .through = middle + Vec2(spec.at, 0),
            .draft = job.press.draft,
            .runs = run_pulls(neutral),
            .compared = compared(job, panel, axis),
            .best = {},
            .best_position = {},
            .tensions = {}};
  if (const auto range = axes_coming_off(panel, job.press.draft))
    pull.best = best_named(panel.pressed, *range);
  if (pull.best) {
    pull.best_position = best_position(panel.pressed, axis);
    pull.compared.push_back({"best", *pull.best});
  }
  return pull;
}

}  // namespace lamwright::two_part
