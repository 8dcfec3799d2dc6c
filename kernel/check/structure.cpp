#include "kernel/check/structure.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <tuple>

#include "kernel/check/beams.hpp"
#include "kernel/mechanics/sag.hpp"
#include "kernel/mechanics/screw.hpp"
#include "kernel/mechanics/timber.hpp"
#include "kernel/press/beam_section.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

// What one strap puts on the end of its beam.
struct EndPull {
  double up = 0;     // N, across the beam
  double lever = 0;  // mm from the strap hole to the former's foot
};

EndPull end_pull(const PressPlan& plan, const StrapEnd& end, double tension) {
  const Vec2 from = end.roller ? end.roller->off : end.leaves;
  const Vec2 along = (from - end.mark).normalized();
  return {tension * std::abs(along.y()), std::max(0.0, std::abs(end.mark.x()) - plan.foot_half)};
}

// The beam's ends are drawn up beside the former, which bears on it at the ends of its foot.
void add_drawn_beam(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const Closure& closure = plan.closures.front();
  const NetSection section = net_section(job.beams);
  double moment = 0, up = 0, bend = 0;
  for (const StrapEnd* end : {&closure.left, &closure.right}) {
    const EndPull pull = end_pull(plan, *end, closure.tension);
    moment = std::max(moment, pull.up * pull.lever);
    up = std::max(up, pull.up);
    bend = std::max(bend, pull.up * std::pow(pull.lever, 3) / (3 * job.beams.modulus * section.inertia));
  }
  out.push_back(
      judged({"beam-bending", "Bending stress of the beams", moment / section.modulus, Bound::at_most,
              design_strength(job.beams.bending), "MPa", "beams", strength_basis(job.beams, "f_m,k"),
              overloaded(moment / section.modulus, design_strength(job.beams.bending)),
              "Use deeper beams (beams.section), wider feet, or less tension (straps.tension)."}));
  constexpr double kMostBend = 2;  // of a beam's end, which no panel feels; common practice, no source
  out.push_back(judged({"beam-end", "Deflection of a beam's end beyond the foot", bend, Bound::at_most,
                        kMostBend, "mm", "beams", "cantilever, P a^3 / (3 E I)", Verdict::caution,
                        "Use deeper beams (beams.section): they give while the straps are drawn."}));
  const double quarter = job.formers.thickness * plan.foot_width / 4;
  out.push_back(
      judged({"foot-bearing", "Pressure of a former's foot on its beam", up / quarter, Bound::at_most,
              design_strength(job.beams.timber.crush), "MPa", "foot",
              strength_basis(job.beams, "f_c,90,k") + "; a strap's pull borne by the foot's outer quarter",
              Verdict::caution, "Give the former a wider foot, or put a plate between foot and beam."}));
}

// A strap's pull on its hole splits the beam along the grain towards the edge it is drawn to.
void add_splitting(const Job& job, double pull, std::vector<Finding>& out) {
  constexpr double kHoleFromEdge = 2.0 / 3;  // of the depth, to the edge it is drawn to
  const double depth = job.beams.depth;
  const double strength = design_strength(splitting_en1995(job.beams.width, depth, kHoleFromEdge * depth));
  out.push_back(judged(
      {"beam-splitting", "Pull across the grain at a strap hole", pull, Bound::at_most, strength, "N",
       "beam ends", "EN 1995-1-1 8.1.4 (a formula for softwood, taken for hardwood), k_mod 0.9, gamma_M 1.3",
       Verdict::fail,
       "The beam splits along its grain: use deeper or wider beams (beams.section), wrap the ends, "
       "or pull less."}));
}

// The pin carries the strap's fitting on both sides of the beam and lies in the wood between.
void add_pin(const Job& job, double pull, std::vector<Finding>& out) {
  const double yield = job.straps.pin_yield;
  const double section = kPi * std::pow(job.straps.hole, 3) / 32;
  const double stress = pull * job.beams.width / 8 / section;
  const double diameter = job.straps.hole * std::cbrt(stress / yield);
  out.push_back(
      judged({"strap-pin", "Bending stress of the pin through a strap hole", stress, Bound::at_most, yield,
              "MPa", "beam ends",
              "beam on two supports under an even load, F b / 8; yield of the row strap-pin (fasteners)",
              overloaded(stress, yield),
              "Use pins of at least " + number(std::ceil(diameter), 0) + " (straps.hole), or pull less."}));
}

// Least depth of lower and upper formers over the middle half between the loops, where beam and former are
// bent most. On leaning beams the least depth anywhere.
double middle_depth(const Job& job, const PressPlan& plan, double reach) {
  const Section& section = plan.sections.front();
  if (!section.upper || job.press.beam_tilt != 0) return plan.former_depth;
  const double highest = section.upper->box().high.y();
  constexpr int kSteps = 200;
  double least = INFINITY;
  for (const auto& [line, sense, foot] : {std::tuple<const Profile&, int, double>{section.lower, 1, 0.0},
                                          {*section.upper, -1, highest + plan.min_depth}})
    for (int i = 0; i <= kSteps; ++i) {
      const Vec2 p = line.point(line.girth() * i / kSteps);
      if (std::abs(p.x()) <= reach / 2) least = std::min(least, sense * (p.y() - foot));
    }
  return std::isfinite(least) ? std::max(least, plan.former_depth) : plan.former_depth;
}

// Beam and former of a two-part press bend side by side between the loops.
EvenBeam rigged_beam(const Job& job, const PressPlan& plan) {
  const Closure& closure = plan.closures.front();
  const double reach = (closure.right.mark.x() - closure.left.mark.x()) / 2;
  const double span = chord(plan.neutral);
  const Board& board = job.formers.board_row;
  const double former = std::min(board.along, board.across) *
                        second_moment(job.formers.thickness, middle_depth(job, plan, reach));
  return {reach, std::min(reach, span / 2), closure.pull() / span,
          job.beams.modulus * second_moment(job.beams.width, job.beams.depth) + former};
}

std::string stronger(const Job& job, const PressPlan& plan, const EvenBeam& beam, double stress) {
  const double most = plan.closures.front().tension * design_strength(job.beams.bending) / stress;
  const auto depth = deep_enough(job.beams, beam.curvature(0) * beam.stiffness, beam.stiffness);
  return (depth ? "Use beams at least " + number(*depth) +
                      " deep (beams.section) with screws as much longer, or pull with"
                : std::string("Pull with")) +
         " at most " + number(std::floor(most / 10) * 10) + " N in each strap (straps.tension).";
}

void add_rigged_beam(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const EvenBeam beam = rigged_beam(job, plan);
  const double stress = beam_stress(job.beams, beam.curvature(0));
  out.push_back(
      judged({"beam-bending", "Bending stress of the beams", stress, Bound::at_most,
              design_strength(job.beams.bending), "MPa", "beams",
              strength_basis(job.beams, "f_m,k") + "; beam and former side by side, net section at a screw",
              overloaded(stress, design_strength(job.beams.bending)), stronger(job, plan, beam, stress)}));
  constexpr double kMostSag = 0.5;  // common practice, no source
  out.push_back(
      judged({"beam-sag", "Bend of beam and former between the loops", beam.sag(beam.half_load),
              Bound::at_most, kMostSag, "mm", "beams",
              "beam on two supports under an even load; beam and former side by side", Verdict::caution,
              "The middle gets less pressure than the ends: use deeper beams (beams.section), raise "
              "formers.min_depth, or pull less."}));
}

void add_loop_bearing(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const Closure& closure = plan.closures.front();
  const double pull = 2 * closure.tension;
  out.push_back(judged({"loop-bearing", "Pressure of a strap loop on its beam",
                        pull / (closure.width * job.beams.width), Bound::at_most,
                        design_strength(job.beams.timber.crush), "MPa", "beams",
                        strength_basis(job.beams, "f_c,90,k"), Verdict::caution,
                        "Lay a hardwood pad or a plate under the loop, and round the beam's edges."}));
  const double foot = 2 * pull / (job.formers.thickness * plan.foot_width);
  out.push_back(
      judged({"foot-bearing", "Pressure of a former's foot on its beam", foot, Bound::at_most,
              design_strength(job.beams.timber.crush), "MPa", "foot", strength_basis(job.beams, "f_c,90,k"),
              Verdict::caution, "Use thicker boards, or pull less."}));
}

void add_slat_bearing(const Job& job, const PressPlan& plan, const PressureMap& map,
                      std::vector<Finding>& out) {
  if (job.caul.crush <= 0 || map.straps.mean <= 0) return;
  const double stress =
      map.straps.reaction *
      hardest_inside(plan, map,
                     plan.panel.thickness + plan.panel.cover + job.caul.thickness + job.caul.liner) /
      map.straps.mean / (job.formers.thickness * job.caul.coverage);
  out.push_back(judged(
      {"slat-bearing", "Pressure of the slats on a former's edge", stress, Bound::at_most,
       design_strength(job.caul.crush), "MPa", "contact edge",
       "strength across the grain of " + job.caul.stiffness_from + "; EN 1995-1-1 k_mod 0.9, gamma_M 1.3",
       Verdict::caution, "Use thicker boards, more formers, or pull less."}));
}

// What the straps put on beams, feet and pins; all of it grows with their tension.
void add_strap_loads(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const Closure& closure = plan.closures.front();
  if (plan.load == Load::belt) {
    add_drawn_beam(job, plan, out);
    const double up = std::max(end_pull(plan, closure.left, closure.tension).up,
                               end_pull(plan, closure.right, closure.tension).up);
    add_splitting(job, up, out);
    add_pin(job, closure.tension, out);
    return;
  }
  if (plan.load == Load::seated) add_rigged_beam(job, plan, out);
  if (closure.loop && closure.loop->pinned) {
    add_splitting(job, 2 * closure.tension, out);
    add_pin(job, 2 * closure.tension, out);
  } else {
    add_loop_bearing(job, plan, out);
  }
}

}  // namespace

double spare_strength(const Job& job, const PressPlan& plan) {
  std::vector<Finding> out;
  if (!plan.closures.empty()) add_strap_loads(job, plan, out);
  double spare = INFINITY;
  for (const Finding& f : out)
    if ((f.id == "beam-bending" || f.id == "beam-splitting" || f.id == "strap-pin") && f.value > 0)
      spare = std::min(spare, f.limit / f.value);
  if (plan.crown) spare = std::min(spare, design_strength(job.beams.bending) / plan.crown->stress);
  return spare;
}

double hand_tension(const Job& job) {
  constexpr double kLever = 2;  // common practice, no source
  return std::min(job.straps.rating, kLever * job.straps.hand);
}

double most_tension(const Job& job, const PressPlan& plan) {
  return std::min(hand_tension(job), plan.closures.front().tension * spare_strength(job, plan));
}

std::vector<Finding> structure_findings(const Job& job, const PressPlan& plan,
                                        const std::optional<PressureMap>& map) {
  std::vector<Finding> out;
  if (!plan.closures.empty()) add_strap_loads(job, plan, out);
  if (map) add_slat_bearing(job, plan, *map, out);
  return out;
}

}  // namespace lamwright
