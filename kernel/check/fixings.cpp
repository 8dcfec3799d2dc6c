#include "kernel/check/fixings.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/check/beams.hpp"
#include "kernel/check/pressure.hpp"
#include "kernel/mechanics/screw.hpp"
#include "kernel/mechanics/timber.hpp"

namespace lamwright {
namespace {

constexpr double kGravity = 9.80665;

// The end slat is drawn down at its outer edge, which presses there with four times its mean pressure.
void add_dent(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const auto pull = strap_pull(job, plan);
  if (!pull) return;
  constexpr double kBare = 2.5;  // f_c,90 of class C24, EN 338:2016: what a face without a cover sheet stands
  const double crush = plan.panel.cover > 0 ? job.layup.cover_board.crush : kBare;
  for (const bool left : {true, false}) {
    double width = 0;
    for (const Layer& layer : plan.layers)
      if (layer.kind == Layer::Kind::top_caul && !layer.slats.empty())
        width = (left ? layer.slats.front() : layer.slats.back()).width();
    if (width <= 0) return;
    const std::string end = left ? "left" : "right";
    out.push_back(judged(
        {"end-slat-" + end, "Pressure under the outer edge of the end slat",
         4 * pull->end_force(left) / width, Bound::at_most, design_strength(crush), "MPa", end + " end",
         "rigid slat loaded at its edge; strength across the grain of " +
             (plan.panel.cover > 0 ? job.layup.cover_board.label : std::string("softwood C24")) +
             ", k_mod 0.9, gamma_M 1.3",
         Verdict::caution, "It dents the pack: use a thicker cover sheet, a wider end slat, or more trim."}));
  }
}

// Board left above the tips of the foot screws: for the caul screw's pilot and a web.
void add_screw_tip(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  constexpr double kLeft = 40;  // pilot 30, web 10
  out.push_back(judged({"screw-tip", "Board left above the tips of the foot screws",
                        plan.former_depth - job.beams.screw_reach, Bound::at_least, kLeft, "mm", "formers",
                        kPractice, Verdict::caution,
                        "Raise formers.min_depth, or let the screws reach less far (beams.screw.reach)."}));
}

int foot_screws(const PressPlan& plan) {
  for (const Part& part : plan.parts)
    if (part.kind() == PartKind::beam) return foot_screws(part);
  return 0;
}

// Ultimate withdrawal of a foot screw from the edge of a former's board.
double edge_hold(const Job& job) {
  const Board& board = job.formers.board_row;
  const double gravity = board.density / 1000;  // of boards, about as sold
  const double diameter = job.beams.screw_diameter, reach = job.beams.screw_reach;
  if (!board.plywood()) return withdrawal_board(gravity, diameter, reach, kFibreboardEdge);
  constexpr double kMoist =
      1.12;  // mass at 12 % moisture over the dry mass that the formula's gravity counts
  return withdrawal_wood(gravity / kMoist, diameter, reach) * kEndGrain;
}

// Lifted by its beams the upper half hangs from its foot screws.
void add_hanging(const Job& job, const PressPlan& plan, const Masses& masses, std::vector<Finding>& out) {
  const int screws = foot_screws(plan) * int(plan.closures.size());
  if (plan.load == Load::belt || screws == 0) return;
  constexpr double kSafety = 5.5;  // ultimate over NDS design withdrawal, 15 700 / 2850 in their inch forms
  constexpr double kSwing = 2;     // a load that is set down hard; common practice, no source
  const double hold = edge_hold(job) / kSafety;
  const double each = kSwing * masses.upper * kGravity / screws;
  out.push_back(
      judged({"upper-screws", "Pull on a foot screw when the upper half is lifted", each, Bound::at_most,
              hold, "N", "upper half",
              job.formers.board_row.plywood()
                  ? "Wood Handbook FPL-GTR-282 eq. 8-10a, end grain three quarters, over 5.5; load doubled: "
                    "common practice, no source"
                  : "Wood Handbook FPL-GTR-282 eq. 8-12, edge of fibreboard, over 5.5; load doubled: common "
                    "practice, no source",
              Verdict::fail, "Use more or longer foot screws (beams.screw), or lift by the formers."}));
}

void add_ratchets(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  double apart = INFINITY, every_second = INFINITY;
  for (std::size_t i = 1; i < plan.closures.size(); ++i) {
    apart = std::min(apart, plan.closures[i].z - plan.closures[i - 1].z);
    if (i > 1) every_second = std::min(every_second, plan.closures[i].z - plan.closures[i - 2].z);
  }
  const bool staggered =
      std::any_of(plan.closures.begin(), plan.closures.end(), [](const Closure& c) { return c.staggered; });
  const double beside = staggered ? every_second : apart;
  if (!std::isfinite(beside)) return;
  out.push_back(judged({"ratchet-spacing",
                        staggered ? "Distance between ratchets side by side, left and right by turns"
                                  : "Distance between ratchets side by side",
                        beside, Bound::at_least, job.straps.ratchet_width, "mm", "straps", kPractice,
                        Verdict::caution, "Put straps on every second former (beams.every = 2)."}));
}

void add_masses(const Masses& masses, std::vector<Finding>& out) {
  constexpr double kOnePerson = 25;  // kg, common practice, no source; local rules come first
  const auto add = [&](const char* id, const std::string& title, double mass, const std::string& where) {
    out.push_back(
        judged({id, title, mass, Bound::at_most, kOnePerson, "kg", where,
                "25 kg for one person: common practice, no source; local rules come first", Verdict::caution,
                mass > 4 * kOnePerson   ? "Lift it with a hoist or a crane."
                : mass > 2 * kOnePerson ? "Lift it with two people and a hoist."
                                        : "Lift it with two people."}));
  };
  add("lift-part", "Mass of the heaviest part", masses.heaviest, masses.heaviest_part);
  if (masses.upper > 0) add("lift-upper", "Mass of the upper half with its caul", masses.upper, "upper half");
  add("lift-panel", "Mass of the panel as pressed", masses.panel, "panel");
}
}  // namespace

std::vector<Finding> fixing_findings(const Job& job, const PressPlan& plan, const Masses& masses) {
  std::vector<Finding> out;
  if (!plan.closures.empty()) {
    add_screw_tip(job, plan, out);
    add_ratchets(job, plan, out);
    add_dent(job, plan, out);
    add_hanging(job, plan, masses, out);
  }
  add_masses(masses, out);
  return out;
}

}  // namespace lamwright
