#include "kernel/check/fixings.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "kernel/check/beams.hpp"
#include "kernel/check/pressure.hpp"
#include "kernel/mechanics/screw.hpp"
#include "kernel/mechanics/timber.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

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

// Least distance from a strap to the one so many after it; infinite where there is none.
double straps_apart(const PressPlan& plan, std::size_t steps) {
  double least = INFINITY;
  for (std::size_t i = steps; i < plan.closures.size(); ++i)
    least = std::min(least, plan.closures[i].z - plan.closures[i - steps].z);
  return least;
}

// How to bring straps at least `needed` apart. The last former always has one, so that only a number of
// formers which comes out even keeps it as far from the strap before; and automatic spacing would take more
// formers for fewer straps.
std::string straps_wider(const Job& job, const PressPlan& plan, double needed) {
  constexpr std::array<const char*, 3> kEvery{"second", "third", "fourth"};
  const int formers = int(plan.sections.size()), every = plan.spacing.every;
  const double length = plan.spacing.pitch * (formers - 1);
  const bool fixed = job.formers.spacing.kind != SpacingSpec::Kind::automatic;
  const bool stack = int(plan.closures.size()) != 1 + (formers - 2 + every) / every;
  for (int n = std::max(2, every); n <= 4 && !stack; ++n) {
    const int count = formers - (formers - 1) % n;
    if (count <= n || n * length < (needed - kAtLeast) * (count - 1)) continue;
    const std::string nth = kEvery[std::size_t(n - 2)], keys = "beams.every = " + std::to_string(n) + ")";
    if (count == formers && fixed) return "Put straps on every " + nth + " former (" + keys;
    return "Take " + std::to_string(count) + " formers with straps on every " + nth +
           " (formers.spacing = {count = " + std::to_string(count) + "}, " + keys;
  }
  return "Space the straps wider (formers.spacing, beams.every)";
}

std::string ratchet_advice(const Job& job, const PressPlan& plan, bool at_one_height) {
  const double needed = job.straps.ratchet_width;
  std::string advice = straps_wider(job, plan, needed);
  if (!at_one_height) return advice + ".";
  if (straps_apart(plan, 2) >= needed - kAtLeast)
    advice += ", or use one ratchet a strap, left and right by turns (straps.tighten = \"one-end\")";
  return advice + ": to sit higher and lower by turns they need free runs of " +
         number(plan.strap_free + job.straps.ratchet, 0) + ".";
}

void add_ratchets(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const bool one_end = !job.straps.both_ends;
  const bool staggered =
      std::any_of(plan.closures.begin(), plan.closures.end(), [](const Closure& c) { return c.staggered; });
  const double beside = straps_apart(plan, one_end || staggered ? 2 : 1);
  if (!std::isfinite(beside)) return;
  const std::string turns = one_end     ? ", left and right by turns"
                            : staggered ? ", higher and lower by turns"
                                        : "";
  out.push_back(judged({"ratchet-spacing", "Distance between ratchets side by side" + turns, beside,
                        Bound::at_least, job.straps.ratchet_width, "mm", "straps", kPractice,
                        Verdict::caution, ratchet_advice(job, plan, !one_end && !staggered)}));
}

// A loop's ratchet lies flat against the side of its beam, so that its thickness has to fit between beams.
void add_ratchet_room(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  constexpr double kRatchetThick = 40;  // common practice, no source
  const double pitch = straps_apart(plan, 1), beam = job.beams.width;
  if (!std::isfinite(pitch)) return;
  out.push_back(judged({"ratchet-room", "Room between neighbouring beams for the ratchet on a strap loop",
                        pitch - beam, Bound::at_least, kRatchetThick, "mm", "beams", kPractice,
                        Verdict::caution, straps_wider(job, plan, kRatchetThick + beam) + "."}));
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
    if (plan.closures.front().loop)
      add_ratchet_room(job, plan, out);
    else
      add_ratchets(job, plan, out);
    add_dent(job, plan, out);
    add_hanging(job, plan, masses, out);
  }
  add_masses(masses, out);
  return out;
}

}  // namespace lamwright
