#include "kernel/press/crowned_flat/method.hpp"

#include <algorithm>

#include "kernel/press/crowned_flat/crown.hpp"
#include "kernel/press/two_part/rig.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

using namespace crowned_flat;

bool is_flat(const Panel& panel) {
  const auto& runs = panel.pressed.runs();
  return std::all_of(runs.begin(), runs.end(), [](const Run& run) { return run.straight(); });
}

int strapped_stations(const Job& job, const Panel& panel) {
  const Stations where = stations(station_spec(job, panel, true));
  return int(std::count(where.strapped.begin(), where.strapped.end(), true));
}

// With the tension in the straps that gives the pressure asked for, if one is.
Job tightened(const Job& job, const Panel& panel, int stations) {
  Job out = job;
  out.press.pull = {};
  out.press.beam_tilt = 0;
  const auto pressure = job.own.number("press.crowned-flat.pressure");
  if (!pressure) return out;
  const double area = panel.pressed.girth() * panel.blank_width();
  out.straps.tension = *pressure * area / (4 * stations);
  if (out.straps.tension > job.straps.rating)
    throw geometry_error("press.crowned-flat.pressure",
                         number(*pressure) + " MPa takes " + number(out.straps.tension, 0) +
                             " N in each strap, rated " + number(job.straps.rating, 0),
                         "ask for at most " + number(4 * stations * job.straps.rating / area, 3) +
                             " MPa, use stronger straps or more formers");
  return out;
}

EvenBeam beam_of(const Job& job, const Panel& panel, double reach) {
  const FormerSpec& formers = job.formers;
  // Beam and former are screwed, not glued: they bend side by side.
  const double stiffness = job.beams.modulus * second_moment(job.beams.width, job.beams.depth) +
                           *job.own.number("press.crowned-flat.former_modulus") *
                               second_moment(formers.thickness, formers.min_depth);
  const double girth = panel.pressed.girth();
  return {reach, girth / 2, 4 * job.straps.tension / girth, stiffness};
}

std::string reason_of(const Suits& suits, const Crown& crown) {
  return (suits.rank > 0 ? suits.reason : "As the job asks; " + suits.reason + ".") +
         " Straight beams would bend by " + number(crown.height, 2) +
         " between the straps and leave the middle without pressure: the contact edges are crowned by as "
         "much.";
}

}  // namespace

std::string CrownedFlatPress::summary() const {
  return "two halves for a flat panel, crowned by what their beams give";
}

std::vector<KeyRow> CrownedFlatPress::keys() const {
  return {{"pressure",
           KeyType::pressure,
           "",
           0.001,
           5,
           {},
           "even pressure asked for; without it what the straps give"},
          {"former_modulus",
           KeyType::number,
           "7500",
           500,
           20000,
           {},
           "MPa, of the former's board bent on edge (birch plywood, from memory)"}};
}

Suits CrownedFlatPress::suits(const Panel& panel) const {
  if (!is_flat(panel)) return {0, "a crowned flat press is for panels without a bend"};
  return {10, "No bend: straps over one mould would not press it."};
}

PressPlan CrownedFlatPress::plan(const Job& job, const Panel& panel) const {
  if (!is_flat(panel))
    throw geometry_error("press.method", "a crowned flat press is for panels without a bend",
                         "set press.method = \"auto\"");
  const int strapped = strapped_stations(job, panel);
  const Job tight = tightened(job, panel, strapped);
  const PressCurves curves = press_curves(tight, panel, panel.pressed, Moulds::both);
  const auto straight =
      two_part::rig(tight, panel, {tight.formers, curves, curves.contact, *curves.upper, 0});
  const EvenBeam beam = beam_of(tight, panel, straight.loops.reach);
  const auto rig = two_part::rig(
      tight, panel,
      {tight.formers, curves, crowned(curves.contact, beam, 1), crowned(*curves.upper, beam, -1), 0});
  PressPlan plan = two_part::plan_of(rig, name());
  plan.load = Load::even;
  plan.crown = Crown{beam.sag(beam.half_load), beam.half_span, beam.load, beam.stiffness,
                     beam.load * strapped / panel.blank_width()};
  plan.reason = reason_of(suits(panel), *plan.crown);
  return plan;
}

}  // namespace lamwright
