#include "kernel/check/seating.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr const char* kRigid = "rigid mould on an elastic bed without tension";
// A pull that spreads the pressure by less than this beside the chosen one is not worth setting up for.
// Common practice, no source.
constexpr double kWorthwhile = 0.005;
constexpr double kThrustShare = 0.1;  // of the pull that uprights hold easily; common practice, no source

bool has_room(const Seated& seated) {
  return seated.full_contact && seated.full_contact->to > seated.full_contact->from;
}

std::string room_text(const Seated& seated) {
  return " Between " + number(seated.full_contact->from, 1) + " and " + number(seated.full_contact->to, 1) +
         " from the chord's middle nothing lifts.";
}

// From `least` to `greatest` of a choice, MPa.
std::string pressures(const PullChoice& choice, double unit) {
  return number(choice.least * unit, 3) + " to " + number(choice.greatest * unit, 3) + " MPa";
}

std::string best_text(const PressPlan& plan) {
  return "Best is " + pull_keys(*plan.pull->best) + ", " + pressures(*plan.pull->best, plan.seated->unit) +
         ".";
}

std::string not_held_text(const PressPlan& plan) {
  const Seated& seated = *plan.seated;
  switch (seated.seating.hold()) {
    case Hold::rolls:
      return "The upper half rolls round the curve: pull through the middle of the chord, square to it.";
    case Hold::slides:
      return "The upper half slides along the flat: pull square to it.";
    case Hold::tips:
    case Hold::held:
      break;
  }
  std::string text =
      "No pressure on the pack balances this pull: turn it (press.pull), or bring it nearer to "
      "the middle of the chord (press.pull_at).";
  if (has_room(seated)) text += room_text(seated);
  if (plan.pull->best && plan.pull->best->presses()) text += " " + best_text(plan);
  return text;
}

// Where the room for the pull line is wide enough, its middle is the cure; else a guide, as long as that
// carries little.
std::string balance_text(const PressPlan& plan, double moved) {
  const Seated& seated = *plan.seated;
  const std::string why = "Left and right loops that differ by 10 percent move the pull line by " +
                          number(moved, 1) + ", and one end lifts: ";
  if (const auto& room = seated.full_contact; room && (room->to - room->from) / 2 > moved)
    return why +
           "bring it into the middle of its room, press.pull_at = " + number((room->from + room->to) / 2, 0) +
           ".";
  const bool guided = seated.side_thrust && std::abs(*seated.side_thrust) <= kThrustShare * seated.pull;
  return why + (guided ? "guide the upper half between uprights and " : "") +
         "tighten left and right by turns" + (plan.neutral.hollow() ? "." : ", or press on one mould.");
}

// How far the pull line may stray, beside how far straps that differ by a tenth move it.
void add_balance(const PressPlan& plan, std::vector<Finding>& out) {
  constexpr double kImbalance = 0.1;  // of left and right tension; common practice, no source
  const Seated& seated = *plan.seated;
  const StrapEnd &left = plan.closures.front().left, &right = plan.closures.front().right;
  const double reach = (right.mark.x() - left.mark.x()) / 2, at = plan.pull->chosen().choice.at;
  Finding finding{"seating-balance",
                  "How far the pull line may stray before the upper half lifts",
                  0,
                  reach * kImbalance / 2,
                  "mm",
                  Verdict::pass,
                  "upper half",
                  kRigid,
                  "farther than loops that differ by 10 percent in tension move it",
                  Bound::at_least};
  if (seated.seating.hold() != Hold::held) {
    finding.verdict = Verdict::fail;
    finding.advice = not_held_text(plan);
  } else {
    if (const auto& room = seated.full_contact)
      finding.value = std::max(0.0, std::min(at - room->from, room->to - at));
    if (finding.value < finding.limit - kAtLeast) {
      finding.verdict = Verdict::caution;
      finding.advice = balance_text(plan, finding.limit);
    }
  }
  out.push_back(finding);
}

std::string stretch_text(const std::vector<Stretch>& stretches) {
  std::string text;
  for (const Stretch& s : stretches)
    text += (text.empty() ? "" : ", ") + number(s.from, 1) + " to " + number(s.to, 1);
  return text;
}

void add_lift(const PressPlan& plan, std::vector<Finding>& out) {
  const Seated& seated = *plan.seated;
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
    if (has_room(seated)) finding.advice += room_text(seated);
    if (plan.pull->best && plan.pull->best->presses()) finding.advice += " " + best_text(plan);
  }
  out.push_back(finding);
}

std::string uneven_text(const PressPlan& plan) {
  const auto& best = plan.pull->best;
  if (best && best->least >= kEven * best->mean) return " " + best_text(plan);
  return plan.neutral.hollow()
             ? " No pull does enough: make steep walls less steep, or the panel in two pieces."
             : " No pull does enough: press it on one mould.";
}

void add_evenness(const PressPlan& plan, std::vector<Finding>& out) {
  const Seating& seating = plan.seated->seating;
  const double even = seating.mean() > 0 ? seating.least() / seating.mean() : 0;
  const bool enough = even >= kEven - kAtLeast;
  out.push_back({"seating-even", "Least over mean pressure round the curve", even, kEven, "",
                 enough ? Verdict::pass : Verdict::caution, "pack", kRigid,
                 "least " + number(seating.least(), 4) + ", mean " + number(seating.mean(), 4) +
                     ", greatest " + number(seating.greatest(), 4) + " MPa" +
                     (enough ? "" : "." + uneven_text(plan)),
                 Bound::at_least});
}

// What uprights beside the upper half would have to hold when it is guided.
void add_side_thrust(const PressPlan& plan, std::vector<Finding>& out) {
  const Seated& seated = *plan.seated;
  if (!seated.side_thrust) return;
  const double thrust = std::abs(*seated.side_thrust), limit = kThrustShare * seated.pull;
  out.push_back({"side-thrust", "Side thrust of a guided upper half", thrust, limit, "N",
                 thrust <= limit ? Verdict::pass : Verdict::caution, "upper half", kRigid,
                 thrust <= limit
                     ? ""
                     : "Leave the upper half free to slide sideways: uprights that guide it would have to "
                       "hold this, and the pressure would be less even."});
}

// What the two loops can do of it where they stand.
std::string as_rigged(const PressPlan& plan) {
  const Pull& pull = *plan.pull;
  if (!pull.tensions) return {};
  const auto& [left, right] = *pull.tensions;
  if (std::abs(left - right) <= 0.01 * (left + right)) return {};
  const double unit = plan.seated->unit * (left + right) / (2 * plan.closures.front().tension);
  return " As rigged, " + number(left, 0) + " N in the left loops and " + number(right, 0) +
         " N in the right ones give " + pressures(*pull.best_position, unit) + ".";
}

// The spread of the chosen pull beside that of the best one.
void add_best(const PressPlan& plan, std::vector<Finding>& out) {
  const Pull& pull = *plan.pull;
  if (!pull.best || plan.seated->seating.hold() != Hold::held) return;
  const PullChoice& chosen = pull.chosen().choice;
  const double limit = pull.best->spread() + kEven / 2;
  Finding finding{"pull-line",
                  "Spread of pressure, greatest less least over mean",
                  chosen.spread(),
                  limit,
                  "",
                  chosen.spread() <= limit ? Verdict::pass : Verdict::caution,
                  "pull line",
                  kRigid,
                  pull.best->presses() && chosen.presses() ? "no pull presses more evenly" : ""};
  if (chosen.spread() - pull.best->spread() > kWorthwhile) {
    const double unit = plan.seated->unit;
    finding.advice = pull_keys(*pull.best) + " presses with " + pressures(*pull.best, unit) + " instead of " +
                     pressures(chosen, unit) + "." + as_rigged(plan);
  }
  out.push_back(finding);
}

}  // namespace

std::vector<Finding> seating_findings(const PressPlan& plan) {
  std::vector<Finding> out;
  add_balance(plan, out);
  if (plan.seated->seating.hold() == Hold::held) {
    add_lift(plan, out);
    add_evenness(plan, out);
    add_side_thrust(plan, out);
  }
  add_best(plan, out);
  return out;
}

}  // namespace lamwright
