#include "kernel/press/one_part/method.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/mould/assemble.hpp"
#include "kernel/press/one_part/beam.hpp"
#include "kernel/press/one_part/pressing.hpp"
#include "kernel/press/stations.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

using namespace one_part;

// What the layout has worked out so far; each step below adds to the plan from it.
struct Laid {
  const Job& job;
  const Panel& panel;
  bool strapped;
  Stations stations;
  PressFrame frame;
  LaidCaul bed;
  std::vector<FlatPressed> flats;
  BeamLayout beam;
};

bool uses_straps(const Job& job) {
  if (job.straps.use != StrapSpec::Use::automatic) return job.straps.use == StrapSpec::Use::yes;
  return job.caul.kind == CaulSpec::Kind::slatted;
}

std::vector<Obstacle> clamp_holes(const Job& job, const std::vector<FlatPressed>& flats) {
  std::vector<Obstacle> holes;
  for (const FlatPressed& flat : flats)
    for (const Vec2& c : flat.clamps) holes.push_back({c, c, job.formers.clamp_hole / 2});
  return holes;
}

// Those planes, from the first on, that lie at least `apart` from the one before.
std::vector<double> standing_apart(const std::vector<double>& planes, double apart) {
  std::vector<double> out;
  for (const double z : planes)
    if (out.empty() || z - out.back() >= apart - kAtLeast) out.push_back(z);
  return out;
}

Laid lay(const Job& job, const Panel& panel) {
  const bool strapped = uses_straps(job);
  if (!strapped && job.caul.kind == CaulSpec::Kind::slatted)
    throw geometry_error("straps.kind", "\"none\" leaves nothing that presses the pack into a slatted caul",
                         "take it out, or use a sheathed or bare mould");
  const Stations where = stations(station_spec(job, panel, strapped, Moulds::lower));
  PressFrame frame = press_frame(job, press_curves(job, panel, panel.pressed, Moulds::lower), strapped);
  LaidCaul bed = bed_caul(job, panel, frame.curves, frame.mould());
  std::vector<FlatPressed> flat = flats(job, frame, panel);
  for (FlatPressed& pressed : flat) {
    pressed.planes = standing_apart(where.mid_planes, job.formers.pressing_width);
    pressed.width = job.formers.pressing_width;
    pressed.force = job.formers.clamp_force;
  }
  BeamLayout beam = beam_layout(job, frame, frame.mould(), strapped, clamp_holes(job, flat));
  return {job, panel, strapped, where, frame, std::move(bed), std::move(flat), std::move(beam)};
}

MouldPieces pieces(const Laid& laid) {
  const PressFrame& frame = laid.frame;
  std::vector<Vec2> clamps;
  for (const FlatPressed& flat : laid.flats)
    clamps.insert(clamps.end(), flat.clamps.begin(), flat.clamps.end());
  return {laid.job,
          laid.stations,
          frame.mould(),
          laid.bed,
          laid.beam.screws,
          clamps,
          laid.beam.timber(),
          {frame.foot_left(), frame.foot_right(), laid.beam.screws, {}},
          beam_ticks(frame.curves.inner, laid.job.panel.trim, 0),
          {frame.contact, frame.left.extend, frame.right.extend, -1, 0},
          {},
          fixing_of(laid.job, frame.mould(), laid.bed),
          false,
          {}};
}

void add_pressing_beams(const Laid& laid, AssemblyBuilder& assembly, std::vector<std::string>& notes) {
  bool ungrooved = false;
  for (const FlatPressed& flat : laid.flats) {
    const PressingBeam beam = pressing_beam(laid.job, laid.frame, laid.panel, flat, laid.strapped);
    ungrooved = ungrooved || !beam.grooved;
    for (const double z : flat.planes) {
      Frame placed = beam.placed;
      placed.origin.z() += z;
      assembly.add(beam.part, placed, Group::lower);
    }
  }
  if (laid.flats.empty()) return;
  const std::size_t stood = laid.flats.front().planes.size();
  if (stood < laid.stations.mid_planes.size())
    notes.push_back("Pressing beams are wider than formers stand apart: they go over " +
                    std::to_string(stood) + " of " + std::to_string(laid.stations.mid_planes.size()) +
                    " formers.");
  if (ungrooved && laid.strapped)
    notes.push_back("Pressing beams bear on the strap itself: it is " + number(laid.job.straps.width) +
                    " wide, too wide for a groove in a beam of " + number(laid.job.formers.pressing_width) +
                    ".");
}

std::vector<Section> sections(const Laid& laid) {
  std::vector<Section> out;
  for (std::size_t i = 0; i < laid.stations.mid_planes.size(); ++i)
    out.push_back({laid.stations.mid_planes[i], laid.frame.contact, std::nullopt,
                   laid.strapped && laid.stations.strapped[i]});
  return out;
}

// Two ratchets one behind the other with the spare length of one. Pulled at one end only, straps have theirs
// left and right by turns instead.
bool stagger_fits(const StrapSpec& straps, const BeamLayout& beam) {
  const double needed = 2 * straps.ratchet + kRatchetSpare;
  return std::min(beam.left.run, beam.right.run) >= needed - kAtLeast;
}

std::vector<Closure> closures(const Laid& laid) {
  std::vector<Closure> out;
  if (!laid.strapped) return out;
  const StrapSpec& straps = laid.job.straps;
  const bool one_behind_another = straps.both_ends && stagger_fits(straps, laid.beam);
  double before = -INFINITY;
  for (const Section& section : sections(laid)) {
    if (!section.strapped) continue;
    const bool touch = section.z - before < straps.ratchet_width - kAtLeast;
    const bool staggered = one_behind_another && touch && !(out.empty() || out.back().staggered);
    out.push_back({section.z,
                   laid.beam.left,
                   laid.beam.right,
                   straps.tension,
                   straps.kind,
                   straps.width,
                   straps.ratchet,
                   staggered,
                   {}});
    before = section.z;
  }
  return out;
}

std::vector<Layer> layers(const Laid& laid) {
  const PressCurves& c = laid.frame.curves;
  const CaulSpec& caul = laid.job.caul;
  std::vector<Layer> out;
  const Profile bed_base = offset(laid.frame.contact, caul.liner);
  if (caul.liner > 0) out.push_back({Layer::Kind::liner, laid.frame.contact, caul.liner, {}});
  double height = 0;
  for (const double sheet : caul.sheathing) {
    out.push_back({Layer::Kind::sheathing, offset(bed_base, height), sheet, {}});
    height += sheet;
  }
  if (caul.kind == CaulSpec::Kind::slatted)
    out.push_back({Layer::Kind::bed_caul, bed_base, caul.thickness, laid.bed.slats});
  if (laid.panel.cover > 0)
    out.push_back({Layer::Kind::cover, offset(c.inner, -laid.panel.cover), laid.panel.cover, {}});
  out.push_back({Layer::Kind::panel, c.inner, laid.panel.thickness, {}});
  if (laid.panel.cover > 0) out.push_back({Layer::Kind::cover, c.outer, laid.panel.cover, {}});
  if (c.top > 0) out.push_back({Layer::Kind::top_caul, c.over, c.top, c.top_slats});
  return out;
}

std::vector<Pin> pins(const Laid& laid, std::vector<std::string>& notes) {
  const CaulSpec& caul = laid.job.caul;
  if (!caul.pitch) return {};
  if (laid.panel.trim < kPinTrim - kAtLeast) {
    notes.push_back("Trim below " + number(kPinTrim) +
                    ", so no locating pins: hold pack and cauls by hand until the first straps are tight.");
    return {};
  }
  const double d = laid.panel.thickness + laid.panel.cover - laid.panel.neutral_height;
  const double datum = offset_station(laid.frame.curves.neutral, laid.frame.curves.datum, d);
  const auto& slats = laid.frame.curves.top_slats;
  const auto after =
      std::find_if(slats.begin(), slats.end(), [&](const Slat& slat) { return slat.from > datum; });
  if (after == slats.end() || after == slats.begin()) {
    notes.push_back(
        "No gap beside the datum slat for locating pins: hold pack and cauls by hand until the first straps "
        "are tight.");
    return {};
  }
  const double station = (std::prev(after)->to + after->from) / 2;
  const Vec2 at = laid.frame.curves.over.point(station);
  std::vector<Pin> out;
  for (const double z : {laid.panel.trim / 2, laid.panel.blank_width() - laid.panel.trim / 2})
    out.push_back({{at.x(), at.y(), z}, kPin});
  return out;
}

std::vector<Hardware> hardware(const Laid& laid, const PressPlan& plan) {
  const int formers = int(laid.stations.mid_planes.size()), straps = int(plan.closures.size());
  const BeamSpec& beams = laid.job.beams;
  std::vector<Hardware> out;
  const auto add = [&](const std::string& name, const std::string& use, int count) {
    if (count > 0) out.push_back({name, use, count});
  };
  add(laid.job.straps.kind, "strap", straps);
  add("ratchet for " + laid.job.straps.kind,
      "tightening, " + std::string(laid.job.straps.both_ends ? "one at each end" : "one at one end"),
      straps * (laid.job.straps.both_ends ? 2 : 1));
  add("strap fitting that straddles a beam " + number(beams.width) + " wide, with a pin of " +
          number(laid.job.straps.hole),
      "hooking straps to beams", 2 * straps);
  int screwed = formers;
  if (laid.job.formers.groove_depth) screwed = straps;
  add("screw " + number(beams.screw_diameter) + " x " + number(beams.screw_length), "beams to formers",
      screwed * int(laid.beam.screws.size()));
  add(caul_screw(laid.job.caul), "bed caul to formers", formers * int(laid.bed.pilots.size()));
  int clamps = 0;
  for (const FlatPressed& flat : laid.flats) clamps += int(flat.clamps.size());
  add("clamp of " + number(laid.job.formers.clamp_force) + " N", "pressing beams to formers",
      clamps * formers);
  if (laid.frame.rollers)
    add("guide roller of " + number(laid.job.straps.roller_diameter) + " with brackets",
        "lower corners of formers", 2 * straps);
  add("steel pin of " + number(kPin), "locating pins", int(plan.pins.size()));
  return out;
}

// Steep walls are why a U goes on one mould: drawn shut by an upper one they would get little of the pull.
std::string steep_walls(const Panel& panel) {
  constexpr double kLittle = 0.5;
  std::string walls;
  double least = 1;
  const std::vector<RunPull> pulls = run_pulls(panel.pressed);
  for (std::size_t i = 0; i < pulls.size(); ++i) {
    const Run& run = panel.pressed.runs()[i];
    if (!run.straight() || run.length < kLeastFlat - kAtLeast || pulls[i].least_share() >= kLittle) continue;
    walls += (walls.empty() ? "" : " and ") + run_name(panel.pressed, i);
    least = std::min(least, pulls[i].least_share());
  }
  if (walls.empty()) return {};
  return " Between two moulds drawn together square to the chord, " + walls + " would get only " +
         number(least, 3) + " of the pull's pressure.";
}

std::string reason_of(const Suits& suits, const Laid& laid) {
  std::string reason =
      suits.rank > 0 ? suits.reason : "As the job asks; by choice it would not be: " + suits.reason + ".";
  if (!laid.flats.empty())
    reason += " " + counted(long(laid.flats.size()), "flat") +
              " get no pressure from a strap and are pressed by pressing beams.";
  return reason + steep_walls(laid.panel);
}

void add_notes(const Laid& laid, PressPlan& plan) {
  if (!laid.stations.spacing.note.empty()) plan.notes.push_back(laid.stations.spacing.note);
  for (const auto& [name, end] :
       {std::pair<std::string, const StrapEnd&>{"left", laid.beam.left}, {"right", laid.beam.right}})
    if (laid.strapped && std::abs(end.exit - laid.job.straps.exit) > kTangent)
      plan.notes.push_back("Strap holes on the " + name + " give way to a foot screw: the strap leaves at " +
                           number(degrees(end.exit), 1) + " degrees.");
  const PressSpec& press = laid.job.press;
  if (press.pull.kind != PullSpec::Kind::square_to_chord || press.pull.at != 0 || press.beam_tilt != 0 ||
      laid.job.straps.pinned)
    plan.notes.push_back(
        "press.pull, pull_at, beam_tilt and straps.anchor have no meaning here: one mould stands with its "
        "chord level and its straps hook to the beams.");
  if (laid.frame.rollers)
    plan.notes.push_back(
        "Straps turn over guide rollers at the formers' lower corners; the ratchets sit beyond them.");
  if (std::any_of(plan.closures.begin(), plan.closures.end(), [](const Closure& c) { return c.staggered; }))
    plan.notes.push_back(
        "Ratchets are wider than the straps stand apart: put them higher and lower by turns.");
}

}  // namespace

std::string OnePartPress::summary() const {
  return "one mould of formers, straps drawn over the pack; flats by pressing beams";
}

Suits OnePartPress::suits(const Panel& panel) const {
  if (panel.pressed.hollow()) return {0, "a strap lifts off a hollow bend"};
  if (panel.pressed.straight()) return {0, "a flat panel gets no pressure from a strap"};
  return {10, "No hollow bend: straps over one mould press it."};
}

PressPlan OnePartPress::plan(const Job& job, const Panel& panel) const {
  const Laid laid = lay(job, panel);
  PressPlan plan{.title = job.title,
                 .date = job.date,
                 .number = job.number,
                 .method = name(),
                 .reason = {},
                 .panel = panel,
                 .neutral = laid.frame.curves.neutral,
                 .sections = sections(laid),
                 .parts = {},
                 .bodies = {},
                 .closures = closures(laid),
                 .load = Load::belt,
                 .pull = {},
                 .seated = {},
                 .crown = {},
                 .leaning = {},
                 .layers = layers(laid),
                 .flats = laid.flats,
                 .pins = {},
                 .hardware = {},
                 .spacing = laid.stations.spacing,
                 .beam_depth = job.beams.depth,
                 .min_depth = job.formers.min_depth,
                 .strap_free = laid.frame.strap_free,
                 .uncovered_left = laid.frame.curves.top_from,
                 .uncovered_right = laid.frame.curves.over.girth() - laid.frame.curves.top_to,
                 .fitting_pitch = fitting_pitch(job, panel, laid.frame.curves),
                 .foot_width = laid.frame.foot(),
                 .foot_half = std::min(-laid.frame.foot_left(), laid.frame.foot_right()),
                 .former_height = laid.frame.height,
                 .former_depth = laid.frame.contact.box().low.y(),
                 .foot_sloped = laid.frame.sloped(),
                 .notes = {}};
  plan.reason = reason_of(suits(panel), laid);
  AssemblyBuilder assembly;
  add_mould(pieces(laid), assembly, plan.notes);
  add_pressing_beams(laid, assembly, plan.notes);
  assembly.add(panel_part(panel, laid.frame.curves), {}, Group::panel);
  assembly.finish(plan);
  plan.pins = pins(laid, plan.notes);
  plan.hardware = hardware(laid, plan);
  add_notes(laid, plan);
  return plan;
}

}  // namespace lamwright
