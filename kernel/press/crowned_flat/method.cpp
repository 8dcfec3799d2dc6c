#include "kernel/press/crowned_flat/method.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/mechanics/timber.hpp"
#include "kernel/press/beam_section.hpp"
#include "kernel/press/crowned_flat/crown.hpp"
#include "kernel/press/two_part/rig.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

using namespace crowned_flat;

Stations stations_of(const Job& job, const Panel& panel) {
  return stations(station_spec(job, panel, true, Moulds::both));
}

int straps(const Stations& where) {
  return int(std::count(where.strapped.begin(), where.strapped.end(), true));
}

// With the tension in the straps at that number of stations that gives the pressure asked for, if one is.
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
                         "ask for at most " +
                             number(rounded_down(4 * stations * job.straps.rating / area, 3), 3) +
                             " MPa, use stronger straps or more formers");
  return out;
}

// The tension depends on the number of formers and, by the slats' sag, the other way round: formers are added
// until the slats are held, and then stay.
Job tightened(const Job& job, const Panel& panel) {
  const bool asked = job.own.number("press.crowned-flat.pressure").has_value();
  Job slack = job;
  if (asked) slack.straps.tension = 1;  // what the job says of tension has no say then
  Stations where = stations_of(slack, panel);
  if (!asked) return tightened(job, panel, straps(where));
  while (true) {
    Job tight = tightened(job, panel, straps(where));
    Stations next = stations_of(tight, panel);
    if (next.mid_planes.size() <= where.mid_planes.size()) {
      tight.formers.spacing.kind = SpacingSpec::Kind::count;
      tight.formers.spacing.count = int(where.mid_planes.size());
      return tight;
    }
    where = std::move(next);
  }
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

// Beyond this share of the half span a beam's curve is no longer that of small bends.
constexpr double kMostSag = 0.1;

void refuse_slack(const Job& job, const EvenBeam& beam) {
  const double sag = beam.sag(beam.half_load), most = kMostSag * beam.half_span;
  if (sag <= most) return;
  // The tension that does not break them is the least of both.
  const double stress = beam_stress(job.beams, beam.curvature(0)),
               unbroken = job.straps.tension * design_strength(job.beams.bending) / stress;
  throw geometry_error("beams.section",
                       "beams " + number(job.beams.width) + " x " + number(job.beams.depth) +
                           " would bend by " + number(sag, 1) + " between straps " +
                           number(2 * beam.half_span, 0) + " apart, at most " + number(most, 1),
                       "use deeper beams, or straps with at most " +
                           number(rounded_down(std::min(job.straps.tension * most / sag, unbroken), 0), 0) +
                           " N (straps.tension)");
}

struct Rigged {
  two_part::Rig rig;
  EvenBeam beam;
};

// The loops stand beside what the crown makes a little narrower, and the crown depends on where they stand:
// both are found by turns.
Rigged rigged(const Job& job, const Panel& panel, const PressCurves& curves) {
  constexpr int kMostTurns = 50;
  const auto built = [&](const Profile& lower, const Profile& upper) {
    return two_part::rig(job, panel, {job.formers, curves, lower, upper, 0});
  };
  double reach = built(curves.contact, *curves.upper).loops.reach;
  for (int turn = 0; turn < kMostTurns; ++turn) {
    const EvenBeam beam = beam_of(job, panel, reach);
    refuse_slack(job, beam);
    two_part::Rig rig = built(crowned(curves.contact, beam, 1), crowned(*curves.upper, beam, -1));
    reach = rig.loops.reach;
    if (std::abs(reach - beam.half_span) < kSamePoint) return {std::move(rig), beam};
  }
  throw geometry_error("beams.section", "the crown and the place of the straps do not settle",
                       "use deeper beams or pull less");
}

void add_notes(const Job& job, const Stations& where, PressPlan& plan) {
  const PressSpec& press = job.press;
  if (press.pull.kind != PullSpec::Kind::square_to_chord || press.pull.at != 0 || press.beam_tilt != 0)
    plan.notes.push_back(
        "press.pull, pull_at and beam_tilt have no meaning here: a flat panel is pulled square to its "
        "middle.");
  if (job.own.number("press.crowned-flat.pressure"))
    plan.notes.push_back("press.crowned-flat.pressure sets the straps to " +
                         number(plan.closures.front().tension, 0) + " N, whatever straps.tension says.");
  if (std::find(where.strapped.begin(), where.strapped.end(), false) != where.strapped.end())
    plan.notes.push_back(
        "Formers between straps are held by their neighbours: screw and glue the spacer blocks to both.");
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
  if (!panel.pressed.straight()) return {0, "a crowned flat press is for panels without a bend"};
  return {10, "No bend: straps over one mould would not press it."};
}

PressPlan CrownedFlatPress::plan(const Job& job, const Panel& panel) const {
  if (!panel.pressed.straight())
    throw geometry_error("press.method", "a crowned flat press is for panels without a bend",
                         "set press.method = \"auto\"");
  const Job tight = tightened(job, panel);
  const PressCurves curves = press_curves(tight, panel, panel.pressed, Moulds::both);
  const auto [rig, beam] = rigged(tight, panel, curves);
  PressPlan plan = two_part::plan_of(rig, name());
  const int strapped = int(plan.closures.size());
  plan.load = Load::even;
  plan.crown = Crown{.height = beam.sag(beam.half_load),
                     .half_span = beam.half_span,
                     .load = beam.load,
                     .stiffness = beam.stiffness,
                     .pressure = beam.load * strapped / panel.blank_width(),
                     .stress = beam_stress(tight.beams, beam.curvature(0))};
  plan.reason = reason_of(suits(panel), *plan.crown);
  add_notes(job, rig.stations, plan);
  return plan;
}

}  // namespace lamwright
