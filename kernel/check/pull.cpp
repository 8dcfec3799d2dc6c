#include "kernel/check/pull.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "kernel/check/seating.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr const char* kPractice = "common practice, no source";
// Walls nearer to the pull than 20 degrees wedge.
constexpr double kWedging = 70;

// Of the pulls compared, one that leans the normals less than the chosen one without lifting any stretch:
// where some keep clear of wedging the most even of those, else the one that leans them least.
std::optional<PullChoice> better_pull(const PressPlan& plan) {
  const Profile& line = plan.panel.pressed;
  const auto angle = [&](const PullChoice& pull) { return degrees(greatest_angle(line, pull.axis)); };
  const double now = angle(plan.pull->chosen().choice);
  std::optional<PullChoice> best;
  const auto better = [&](const PullChoice& a, const PullChoice& b) {
    const bool clear_a = angle(a) <= kWedging, clear_b = angle(b) <= kWedging;
    if (clear_a != clear_b) return clear_a;
    return clear_a ? a.spread() < b.spread() : angle(a) < angle(b);
  };
  constexpr double kWorthTurning = 0.05;  // degrees
  for (const NamedPull& named : plan.pull->compared) {
    const bool relieves = named.choice.presses() && angle(named.choice) < now - kWorthTurning;
    if (relieves && (!best || better(named.choice, *best))) best = named.choice;
  }
  return best;
}

std::string axis_advice(const PressPlan& plan) {
  if (const auto better = better_pull(plan))
    return "Set " + pull_keys(*better) + ": no normal then leans more than " +
           number(degrees(greatest_angle(plan.panel.pressed, better->axis)), 1) + " degrees from the pull.";
  return std::string("No axis does better and presses all over: make its walls less steep") +
         (plan.neutral.hollow() ? "." : ", or press it on one mould.");
}

std::string share_text(const RunPull& pull) {
  const std::string least = number(pull.least_share(), 4), greatest = number(pull.greatest_share(), 4);
  return "presses with " + (least == greatest ? least : least + " to " + greatest) + " of the pull";
}

Finding angle_finding(const PressPlan& plan, std::size_t run) {
  const RunPull& pull = plan.pull->runs[run];
  const double angle = degrees(pull.greatest()), stuck = 90 - degrees(plan.pull->draft);
  Finding out{"pull-angle-" + std::to_string(run + 1),
              "Angle of the panel's normal to the pull",
              angle,
              std::min(kWedging, stuck),
              "deg",
              Verdict::pass,
              run_name(plan.neutral, run),
              kPractice,
              share_text(pull)};
  if (angle > stuck + kAtLeast) {
    out.limit = stuck;
    out.verdict = Verdict::fail;
    out.advice = "Its steepest part gets " + number(pull.least_share(), 3) +
                 " of the pull and does not come off. " + axis_advice(plan);
  } else if (angle > kWedging + kAtLeast) {
    out.verdict = Verdict::caution;
    out.advice = "Such a wall wedges and is hard to open; it gets " + number(pull.least_share(), 3) +
                 " of the pull. " + axis_advice(plan);
  }
  return out;
}

}  // namespace

std::vector<Finding> pull_findings(const PressPlan& plan) {
  std::vector<Finding> out;
  if (!plan.pull || !plan.seated) return out;
  for (std::size_t run = 0; run < plan.pull->runs.size(); ++run) out.push_back(angle_finding(plan, run));
  for (Finding& finding : seating_findings(plan)) out.push_back(std::move(finding));
  return out;
}

}  // namespace lamwright
