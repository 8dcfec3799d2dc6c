#include "kernel/check/pull.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr const char* kPractice = "common practice, no source";
constexpr const char* kRigid = "rigid mould on an elastic bed without tension";
// Walls nearer to the pull than 20 degrees wedge.
constexpr double kWedging = 70;
// Least over mean pressure that a glue line puts up with. Common practice, no source.
constexpr double kEven = 0.6;
// A pull that spreads the pressure by less than this beside the chosen one is the chosen one but for
// rounding.
constexpr double kWorthwhile = 0.001;

std::string axis_advice(const PressPlan& plan) {
  const double best = degrees(bisector(plan.panel.pressed));
  const Headings range = headings(plan.panel.pressed);
  if (std::abs(best - degrees(plan.pull->axis)) < 0.05)
    return "No axis does better: make its walls less steep, or press it on one mould.";
  const double left = degrees(range.greatest - range.least) / 2;
  return "Set press.pull = " + number(best, 1) + ": no normal then leans more than " + number(left, 1) +
         " degrees from the pull.";
}

Finding angle_finding(const PressPlan& plan, std::size_t run) {
  const RunPull& pull = plan.pull->runs[run];
  const double angle = degrees(pull.greatest()), draft = degrees(plan.pull->draft);
  Finding out{"pull-angle-" + std::to_string(run + 1),
              "Angle of the panel's normal to the pull",
              angle,
              kWedging,
              "deg",
              Verdict::pass,
              run_name(plan.neutral, run),
              kPractice,
              "presses with " + number(pull.least_share(), 4) + " to " + number(pull.greatest_share(), 4) +
                  " of the pull"};
  if (angle > 90 - draft + kAtLeast) {
    out.limit = 90 - draft;
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

std::string held_text(Hold hold) {
  switch (hold) {
    case Hold::rolls:
      return "The upper half rolls round the curve: pull through the middle of the chord, square to it.";
    case Hold::slides:
      return "The upper half slides along the flat: pull square to it.";
    case Hold::tips:
      return "No pressure on the pack balances this pull: turn it (press.pull), or bring it nearer to the "
             "middle of the chord (press.pull_at).";
    case Hold::held:
      break;
  }
  return {};
}

void add_hold(const Seated& seated, std::vector<Finding>& out) {
  const Hold hold = seated.seating.hold();
  out.push_back({"seating-hold", "Upper half in balance on the pack", hold == Hold::held ? 1.0 : 0.0, 1, "",
                 hold == Hold::held ? Verdict::pass : Verdict::fail, "upper half", kRigid, held_text(hold)});
}

std::string stretch_text(const std::vector<Stretch>& stretches) {
  std::string text;
  for (const Stretch& s : stretches)
    text += (text.empty() ? "" : ", ") + number(s.from, 1) + " to " + number(s.to, 1);
  return text;
}

void add_lift(const Seated& seated, std::vector<Finding>& out) {
  double lifted = 0;
  for (const Stretch& s : seated.seating.lifted()) lifted += s.to - s.from;
  Finding finding{"seating-lift",
                  "Girth on which the upper half lifts off",
                  lifted,
                  0,
                  "mm",
                  Verdict::pass,
                  "pack",
                  kRigid,
                  ""};
  if (lifted > kAtLeast) {
    finding.verdict = Verdict::fail;
    finding.where = "girth " + stretch_text(seated.seating.lifted());
    finding.advice = "No pressure there: move the pull line (press.pull_at) or turn it (press.pull).";
    if (seated.full_contact && seated.full_contact->to > seated.full_contact->from)
      finding.advice += " Between " + number(seated.full_contact->from, 1) + " and " +
                        number(seated.full_contact->to, 1) + " from the chord's middle nothing lifts.";
  }
  out.push_back(finding);
}

void add_evenness(const Seated& seated, std::vector<Finding>& out) {
  const Seating& seating = seated.seating;
  const double even = seating.mean() > 0 ? seating.least() / seating.mean() : 0;
  out.push_back({"seating-even", "Least over mean pressure round the curve", even, kEven, "",
                 even >= kEven - kAtLeast ? Verdict::pass : Verdict::caution, "pack", kRigid,
                 "least " + number(seating.least(), 4) + ", mean " + number(seating.mean(), 4) +
                     ", greatest " + number(seating.greatest(), 4) + " MPa"});
}

// What uprights beside the upper half would have to hold when it is guided.
void add_side_thrust(const Seated& seated, std::vector<Finding>& out) {
  constexpr double kShare = 0.1;  // of the pull, common practice, no source
  if (!seated.side_thrust) return;
  const double thrust = std::abs(*seated.side_thrust), limit = kShare * seated.pull;
  out.push_back(
      {"side-thrust", "Side thrust of a guided upper half", thrust, limit, "N",
       thrust <= limit ? Verdict::pass : Verdict::caution, "upper half", kRigid,
       thrust <= limit ? "" : "Guide the upper half with uprights that hold this, or turn the pull."});
}

std::string best_text(const PullChoice& best, const PullChoice& chosen) {
  return "press.pull = " + number(degrees(best.axis), 2) + " with press.pull_at = " + number(best.at, 1) +
         " brings the pressure from " + number(chosen.least, 3) + " .. " + number(chosen.greatest, 3) +
         " to " + number(best.least, 3) + " .. " + number(best.greatest, 3) + " times even.";
}

// How much more the chosen pull spreads the pressure than the best one would.
void add_best(const PressPlan& plan, std::vector<Finding>& out) {
  const Pull& pull = *plan.pull;
  if (!pull.best || plan.seated->seating.hold() != Hold::held) return;
  const PullChoice& chosen = pull.compared.front().choice;
  const double more = chosen.spread() - pull.best->spread();
  Finding finding{"pull-line",
                  "Spread of pressure over that of the best pull",
                  more,
                  kEven / 2,
                  "",
                  more <= kEven / 2 ? Verdict::pass : Verdict::caution,
                  "pull line",
                  kRigid,
                  "no pull presses more evenly"};
  if (more > kWorthwhile) {
    finding.advice = best_text(*pull.best, chosen);
    const double sum = pull.left_tension + pull.right_tension;
    if (pull.best_position && pull.left_tension > 0 && pull.right_tension > 0 &&
        std::abs(pull.left_tension - pull.right_tension) > 0.01 * sum)
      finding.advice += " As rigged, " + number(pull.left_tension, 0) + " N in the left loops and " +
                        number(pull.right_tension, 0) + " N in the right ones do part of it.";
  }
  out.push_back(finding);
}

}  // namespace

std::vector<Finding> pull_findings(const PressPlan& plan) {
  std::vector<Finding> out;
  if (!plan.pull || !plan.seated) return out;
  for (std::size_t run = 0; run < plan.pull->runs.size(); ++run) out.push_back(angle_finding(plan, run));
  add_hold(*plan.seated, out);
  if (plan.seated->seating.hold() == Hold::held) {
    add_lift(*plan.seated, out);
    add_evenness(*plan.seated, out);
    add_side_thrust(*plan.seated, out);
  }
  add_best(plan, out);
  return out;
}

}  // namespace lamwright
