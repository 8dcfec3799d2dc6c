#include "kernel/check/beams.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/mechanics/sag.hpp"
#include "kernel/mechanics/timber.hpp"
#include "kernel/press/beam_section.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// A beam that gives much is a spring: the crown then suits one tension only.
void add_crown(const PressPlan& plan, std::vector<Finding>& out) {
  constexpr double kSlender = 100;  // of the span between the straps
  Finding finding{"crown",
                  "Crown of the contact edges",
                  plan.crown->height,
                  2 * plan.crown->half_span / kSlender,
                  "mm",
                  Verdict::pass,
                  "formers",
                  kPractice,
                  ""};
  if (finding.value > finding.limit + kAtLeast) {
    finding.verdict = Verdict::caution;
    finding.advice = "The beams are slender and give much: use deeper beams (beams.section) or pull less.";
  }
  out.push_back(finding);
}

void add_bending(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const double limit = design_strength(job.beams.bending), stress = plan.crown->stress;
  Finding finding{"beam-bending", "Bending stress of the beams",      stress, limit, "MPa", Verdict::pass,
                  "beams",        strength_basis(job.beams, "f_m,k"), ""};
  if (stress > limit + kAtLeast) {
    finding.verdict = overloaded(stress, limit);
    // Straps a little slacker stand a little wider, for the crown narrows the press: hence some to spare.
    constexpr double kSpare = 0.98, kStep = 10;
    const double most = kSpare * plan.closures.front().tension * limit / stress;
    const auto depth = deep_enough(job.beams, stress / beam_stress(job.beams, 1) * plan.crown->stiffness,
                                   plan.crown->stiffness);
    const auto asked = job.own.number("press.crowned-flat.pressure");
    const std::string pull = asked ? "ask for at most " +
                                         number(rounded_down(kSpare * *asked * limit / stress, 3), 3) +
                                         " MPa (press.crowned-flat.pressure)."
                                   : "pull with at most " + number(std::floor(most / kStep) * kStep) +
                                         " N in each strap (straps.tension).";
    finding.advice = (depth ? "Use beams at least " + number(*depth) +
                                  " deep (beams.section) with screws as much longer, or "
                            : std::string("There is no beam so deep: ")) +
                     pull;
  }
  out.push_back(finding);
}

// Wood on wood, and a strap on wood. Common practice, no source.
constexpr double kFriction = 0.2;
// What a screw of diameter d holds across its axis, N / mm2 of d squared. Common practice, no source.
constexpr double kAcrossScrew = 20;

// What the screws through a part's bores of that use hold across their axes; the bores are `wider` than they.
double screws_hold(const PressPlan& plan, PartKind kind, BoreUse use, double wider) {
  double hold = 0;
  for (const Part& part : plan.parts) {
    if (part.kind() != kind) continue;
    hold = 0;  // of one part: the beams are alike
    for (const Bore& bore : part.bores())
      if (bore.use == use) hold += kAcrossScrew * std::pow(bore.diameter - wider, 2);
  }
  return hold;
}

// A former on one screw turns on it.
void add_foot_screws(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  constexpr double kToEnd = 40;  // of a screw to the end of the foot
  for (const Part& part : plan.parts) {
    if (part.kind() != PartKind::beam) continue;
    const int screws = foot_screws(part);
    Finding finding{"foot-screws",
                    "Screws from a beam into a former's foot",
                    double(screws),
                    2,
                    "",
                    Verdict::pass,
                    part.name(),
                    kPractice,
                    "",
                    Bound::at_least};
    if (screws < 2) {
      finding.verdict = Verdict::caution;
      const double pitch = std::floor(plan.foot_half - kToEnd);
      finding.advice =
          "A former on one screw turns: " + (pitch >= 25 && pitch < job.beams.screw_pitch
                                                 ? "set beams.screw.pitch = " + number(pitch) + "."
                                                 : std::string("cleat its foot to the beam on both sides."));
    }
    out.push_back(finding);
    return;
  }
}

// A leaning beam is pushed along its formers by its two loops, each of them along the beam by its own pull.
void add_thrust(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const double tilt = std::abs(job.press.beam_tilt);
  if (!plan.pull || tilt == 0 || plan.closures.empty()) return;
  const Closure& closure = plan.closures.front();
  const auto add = [&](const char* id, const char* title, double pull, double screws, const char* where,
                       const std::string& advice) {
    const double value = pull * std::sin(tilt), limit = kFriction * pull * std::cos(tilt) + screws;
    const bool holds = value <= limit + kAtLeast;
    const Verdict verdict = holds                      ? Verdict::pass
                            : value <= kSudden * limit ? Verdict::caution
                                                       : Verdict::fail;
    out.push_back({id, title, value, limit, "N", verdict, where, kPractice,
                   holds ? std::string("friction and screws hold it") : advice});
  };
  add("beam-thrust", "Thrust of the straps along a leaning beam", closure.pull(),
      screws_hold(plan, PartKind::beam, BoreUse::foot_screw, 1), "beam",
      "Screw a cleat to the beam against the former's foot, add foot screws (beams.screw.pitch), or lean the "
      "beams less (press.beam_tilt).");
  if (closure.loop && !closure.loop->pinned)
    add("stop-thrust", "Thrust of a strap loop on its stop", closure.pull() / 2,
        screws_hold(plan, PartKind::stop, BoreUse::stop_screw, 0.5), "stop",
        "Hook the straps to pins (straps.anchor = \"pin\"), or lean the beams less (press.beam_tilt).");
}

// Straight beams between the straps bend away from a flat panel's middle; a bend hides that, a flat does not.
void add_flat_sag(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  constexpr double kMostSag = 0.5;  // mm, common practice, no source
  if (!plan.seated || !plan.panel.pressed.straight() || plan.closures.empty()) return;
  const StrapEnd &left = plan.closures.front().left, &right = plan.closures.front().right;
  const double girth = plan.panel.pressed.girth();
  const EvenBeam beam{(right.mark.x() - left.mark.x()) / 2, girth / 2, plan.closures.front().pull() / girth,
                      job.beams.modulus * second_moment(job.beams.width, job.beams.depth)};
  const double sag = beam.sag(beam.half_load);
  const bool stiff = sag <= kMostSag + kAtLeast;
  out.push_back({"flat-sag", "Bend of straight beams between the straps", sag, kMostSag, "mm",
                 stiff ? Verdict::pass : Verdict::fail, "beams", kPractice,
                 stiff ? ""
                       : "The middle of a flat panel gets little pressure between straight beams: set "
                         "press.method = \"crowned-flat\" (or \"auto\")."});
}

// A leaning beam is there to make formers smaller.
void add_tilt(const PressPlan& plan, std::vector<Finding>& out) {
  if (!plan.leaning) return;
  const double share = *plan.leaning;
  const bool smaller = share <= 1 + kAtLeast;
  out.push_back({"beam-tilt", "Formers on leaning beams against formers on level ones, by area", share, 1, "",
                 smaller ? Verdict::pass : Verdict::caution, "formers", kPractice,
                 smaller ? ""
                         : "Leaning beams make these formers larger: lean them the other way or not at all "
                           "(press.beam_tilt)."});
}

}  // namespace

std::optional<double> deep_enough(const BeamSpec& beams, double moment, double stiffness) {
  const double beside = stiffness - beams.modulus * second_moment(beams.width, beams.depth);
  constexpr double kStep = 10, kDeepest = 600;
  for (double depth = (std::floor(beams.depth / kStep + kAtLeast) + 1) * kStep; depth <= kDeepest;
       depth += kStep) {
    const double both = beside + beams.modulus * second_moment(beams.width, depth);
    if (beam_stress(deeper(beams, depth), moment / both) <= design_strength(beams.bending)) return depth;
  }
  return std::nullopt;
}

std::string strength_basis(const BeamSpec& beams, const std::string& strength) {
  return "EN 338:2016 " + strength + " of " + beams.timber_class +
         ", EN 1995-1-1 k_mod 0.9 (short-term), gamma_M 1.3";
}

int foot_screws(const Part& beam) {
  return int(std::count_if(beam.bores().begin(), beam.bores().end(),
                           [](const Bore& bore) { return bore.use == BoreUse::foot_screw; }));
}

std::vector<Finding> beam_findings(const Job& job, const PressPlan& plan) {
  std::vector<Finding> out;
  if (plan.crown) {
    add_crown(plan, out);
    add_bending(job, plan, out);
  }
  add_foot_screws(job, plan, out);
  add_flat_sag(job, plan, out);
  add_tilt(plan, out);
  add_thrust(job, plan, out);
  return out;
}

}  // namespace lamwright
