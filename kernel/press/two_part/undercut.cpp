#include "kernel/press/two_part/undercut.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/two_part/axis.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/units.hpp"

namespace lamwright::two_part {
namespace {

constexpr double kUpright = kPi / 2;

// How far the normal where a run begins (or the last ends) goes past a right angle.
double past(const Profile& line, std::size_t joint) { return std::abs(line.pose(joint).heading) - kUpright; }

// A small undercut is told with the places that show it.
std::string past_text(double angle) {
  const double by = degrees(angle);
  return number(by, by < 0.05 ? 7 : 1);
}

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
    text += (text.empty() ? "" : "; ") + runs_at(line, from, to) + " by " + past_text(past(line, worst)) +
            " degrees at (" + number(p.x(), 1) + ", " + number(p.y(), 1) + ")";
    from = to;
  }
  return text;
}

struct Way {
  std::string keys;
  PullChoice choice;
};

// The more even of square to the chord and the bisector that lies in the range; the bisector always does.
Way plainest(const Profile& line, const Headings& axes) {
  const double middle = bisector(line);
  const auto written = short_degrees(middle, axes, 1);
  const Way bisecting{
      written ? "press.pull = " + number(*written, 7) + " (or \"bisector\")" : "press.pull = \"bisector\"",
      pull_choice(line, middle, 0)};
  if (axes.least > 0 || axes.greatest < 0 || (written && *written == 0)) return bisecting;
  const Way square{"press.pull = \"square-to-chord\"", pull_choice(line, 0, 0)};
  return more_even(square.choice, bisecting.choice) ? square : bisecting;
}

std::string way_out(const Panel& panel, double draft) {
  const Headings range = headings(panel.pressed);
  const double turned = degrees(range.greatest - range.least);
  const auto clear = axes_coming_off(panel, 0);
  if (!clear)
    return "no axis clears it: its normals turn through " + number(turned, 3) +
           " degrees, at most 180 come apart; " +
           (panel.pressed.hollow() ? "" : "press it on one mould (press.method = \"one-part\"), ") +
           "make the panel in two pieces or turn less";
  const auto drafted = axes_coming_off(panel, draft);
  const std::string less = drafted ? "" : ", though with less draft than press.draft asks for";
  const Headings& axes = drafted ? *drafted : *clear;
  const Way way = plainest(panel.pressed, axes);
  if (way.choice.presses()) return "set " + way.keys + ", which clears it" + less;
  const auto best = best_named(panel.pressed, axes);
  if (best && best->presses()) return "set " + pull_keys(*best) + ", which clears it" + less;
  return "set " + way.keys + ", which clears it" + less + (less.empty() ? ", though" : " and") +
         " part of the pack then gets no pressure";
}

}  // namespace

void refuse_undercut(const Panel& panel, double axis, double draft) {
  const std::string places = undercuts(pull_upright(panel.pressed, axis));
  if (!places.empty())
    throw geometry_error("undercut", places + ", across and along the pull from the chord's middle",
                         way_out(panel, draft));
}

}  // namespace lamwright::two_part
