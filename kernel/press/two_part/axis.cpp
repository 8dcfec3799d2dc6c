#include "kernel/press/two_part/axis.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::two_part {
namespace {

constexpr double kUpright = kPi / 2;

// How far the normal where a run begins (or the last ends) goes past a right angle.
double past(const Profile& line, std::size_t joint) { return std::abs(line.pose(joint).heading) - kUpright; }

// The runs that meet at the joints from..to.
std::string runs_at(const Profile& line, std::size_t from, std::size_t to) {
  std::vector<std::string> names;
  const std::size_t first = from == 0 ? 0 : from - 1, last = std::min(to, line.runs().size() - 1);
  for (std::size_t i = first; i <= last; ++i) names.push_back(run_name(line, i));
  return listed(names, "and");
}

// "line 1 and bend 1 by 10 degrees at (-301.7, 14.8)", for each stretch whose normals go past a right angle.
std::string undercuts(const Profile& line) {
  const std::size_t joints = line.runs().size() + 1;
  std::string text;
  for (std::size_t from = 0; from < joints; ++from) {
    if (past(line, from) <= kRightAngle) continue;
    std::size_t to = from, worst = from;
    const auto goes_on = [&](std::size_t joint) {
      return joint < joints && past(line, joint) > kRightAngle &&
             line.pose(joint).heading * line.pose(from).heading > 0;
    };
    for (; goes_on(to + 1); ++to)
      if (past(line, to + 1) > past(line, worst) + kRightAngle) worst = to + 1;
    const Vec2 p = line.pose(worst).point;
    text += (text.empty() ? "" : "; ") + runs_at(line, from, to) + " by " +
            number(degrees(past(line, worst)), 1) + " degrees at (" + number(p.x(), 1) + ", " +
            number(p.y(), 1) + ")";
    from = to;
  }
  return text;
}

std::string way_out(const Panel& panel, double draft) {
  const Headings range = headings(panel.pressed);
  const double turned = degrees(range.greatest - range.least);
  const auto clear = clearing_axes(panel.pressed, kUpright);
  if (!clear)
    return "no axis clears it: its normals turn through " + number(turned, 1) +
           " degrees, at most 180 come apart; make the panel in two pieces or turn less";
  const auto drafted = clearing_axes(panel.pressed, kUpright - draft);
  const std::string less = drafted ? "" : ", though with less draft than press.draft asks for";
  const double middle = bisector(panel.pressed);
  const std::string bisecting =
      "set press.pull = " + number(degrees(middle), 1) + " (or \"bisector\"), which clears it" + less;
  if (pull_choice(panel.pressed, middle, 0).presses()) return bisecting;
  const Headings& axes = drafted ? *drafted : *clear;
  const auto best = best_pull(panel.pressed, axes.least, axes.greatest);
  if (best && best->presses()) return "set " + pull_keys(*best) + ", which clears it" + less;
  return bisecting + (less.empty() ? ", though" : " and") + " part of the pack then gets no pressure";
}

// Pulls under which the upper half comes off, the chosen one first; one that is another's double is left out.
std::vector<NamedPull> compared(const Job& job, const Panel& panel, double axis) {
  const Profile& line = panel.pressed;
  const double at = job.press.pull.at, middle = bisector(line);
  const auto clear = clearing_axes(line, kUpright + kRightAngle);
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

void refuse_undercut(const Panel& panel, double axis, double draft) {
  const std::string places = undercuts(pull_upright(panel.pressed, axis));
  if (!places.empty())
    throw geometry_error("undercut", places + ", across and along the pull from the chord's middle",
                         way_out(panel, draft));
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
  if (const auto range = clearing_axes(panel.pressed, kUpright - job.press.draft))
    pull.best = best_pull(panel.pressed, range->least, range->greatest);
  if (pull.best) {
    pull.best_position = best_position(panel.pressed, axis);
    pull.compared.push_back({"best", *pull.best});
  }
  return pull;
}

}  // namespace lamwright::two_part
