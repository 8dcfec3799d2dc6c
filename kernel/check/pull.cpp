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

// Walls nearer to the pull than 20 degrees wedge.
constexpr double kWedging = 70;

double run_angle(const PressPlan& plan, std::size_t run, double axis) {
  return degrees(run_pulls(pull_upright(plan.panel.pressed, axis))[run].greatest());
}

// Of the pulls compared, one that leans this run and the worst one less than the chosen one does, lifts
// nothing and keeps the pressure even, or no less even than now: where some keep clear of wedging the most
// even of those, else the one that leans the normals least.
std::optional<PullChoice> better_pull(const PressPlan& plan, std::size_t run) {
  constexpr double kWorthTurning = 0.05;  // degrees
  const auto worst = [&](const PullChoice& pull) {
    return degrees(greatest_angle(plan.panel.pressed, pull.axis));
  };
  const PullChoice& chosen = plan.pull->chosen().choice;
  const auto relieves = [&](const PullChoice& pull) {
    return worst(pull) <= worst(chosen) + kAtLeast &&
           run_angle(plan, run, pull.axis) < run_angle(plan, run, chosen.axis) - kWorthTurning &&
           pull.presses() && pull.evenness() >= std::min(kEven, chosen.evenness());
  };
  const auto better = [&](const PullChoice& a, const PullChoice& b) {
    const bool clear_a = worst(a) <= kWedging, clear_b = worst(b) <= kWedging;
    if (clear_a != clear_b) return clear_a;
    return clear_a ? a.spread() < b.spread() : worst(a) < worst(b);
  };
  std::optional<PullChoice> best;
  for (const NamedPull& named : plan.pull->compared)
    if (relieves(named.choice) && (!best || better(named.choice, *best))) best = named.choice;
  return best;
}

std::string axis_advice(const PressPlan& plan, std::size_t run) {
  if (const auto better = better_pull(plan, run))
    return "Set " + pull_keys(*better) + ": no normal then leans more than " +
           number(degrees(greatest_angle(plan.panel.pressed, better->axis)), 1) +
           " degrees from the pull, and the pressure is " + number(better->least, 2) + " to " +
           number(better->greatest, 2) + " of an even one.";
  return std::string("No axis does better and presses all over evenly: make its walls less steep") +
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
                 " of the pull and does not come off. " + axis_advice(plan, run);
  } else if (angle > kWedging + kAtLeast) {
    out.verdict = Verdict::caution;
    out.advice = "Such a wall wedges and is hard to open; it gets " + number(pull.least_share(), 3) +
                 " of the pull. " + axis_advice(plan, run);
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
