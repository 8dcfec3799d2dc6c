#include "kernel/press/two_part/rig.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/mould/foot.hpp"
#include "kernel/press/two_part/layers.hpp"
#include "kernel/press/two_part/pins.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::two_part {
namespace {

std::vector<Obstacle> pilots_of(const LaidCaul& caul, const Mould& mould) {
  std::vector<Obstacle> out;
  for (const double s : caul.pilots) {
    const Pose pose = mould.contact.at(s);
    out.push_back({pose.point, pose.point - kCaulPilotDepth * pose.normal(), kCaulPilot / 2});
  }
  return out;
}

// Screws of the lower beam that also suit the upper half, which stands on its head.
std::vector<double> common_screws(const Rig& rig) {
  const Job& job = rig.job;
  const Mould &lower = rig.halves.lower_mould, &upper = rig.halves.upper_mould;
  const double from = std::max(lower.foot_left(), -upper.foot_right()),
               to = std::min(lower.foot_right(), -upper.foot_left());
  const FootScrews above({job, upper, -to, -from, pilots_of(rig.top, upper), {}});
  const FootScrews both(
      {job, lower, from, to, pilots_of(rig.bed, lower), [&](double x) { return above.stands(-x); }});
  std::vector<double> screws = both.laid();
  std::erase_if(screws, [&](double x) { return !both.stands(x); });
  if (screws.empty())
    throw geometry_error("formers",
                         "no foot screw finds wood in both halves over " + number(to - from, 1) + " of foot",
                         "raise formers.min_depth or use a smaller press.beam_tilt");
  return screws;
}

std::vector<double> mirrored(std::vector<double> stations) {
  for (double& x : stations) x = -x;
  std::reverse(stations.begin(), stations.end());
  return stations;
}

// Plain and grooved bearers are as long as the longer foot, so that the upper ones are the lower ones turned
// over.
TimberSpec bearer_of(const Rig& rig) {
  const Mould &lower = rig.halves.lower_mould, &upper = rig.halves.upper_mould;
  return {std::min(lower.foot_left(), -upper.foot_right()),
          std::max(lower.foot_right(), -upper.foot_left()),
          rig.screws,
          {}};
}

MouldPieces lower_pieces(const Rig& rig) {
  const Halves& h = rig.halves;
  return {rig.job,
          rig.stations,
          h.lower_mould,
          rig.bed,
          rig.screws,
          {},
          rig.loops.lower_beam,
          bearer_of(rig),
          beam_ticks(h.curves.inner, rig.job.panel.trim, h.tilt),
          {h.lower, h.lower_mould.left_extend, h.lower_mould.right_extend, -1, 0},
          h.lower_place};
}

MouldPieces upper_pieces(const Rig& rig) {
  const Halves& h = rig.halves;
  return {rig.job,
          rig.stations,
          h.upper_mould,
          rig.top,
          mirrored(rig.screws),
          {},
          rig.loops.upper_beam,
          bearer_of(rig),
          beam_ticks(h.curves.inner, rig.job.panel.trim, h.tilt),
          {h.upper, h.upper_mould.right_extend, h.upper_mould.left_extend, 1, h.height},
          h.upper_place,
          true};
}

// What lies between the loops: both moulds, blocks beside the formers, the pack.
Box2 between_loops(const Rig& rig) {
  Box2 all = rig.halves.box();
  for (const Profile* line : {&rig.halves.curves.inner, &rig.halves.curves.outer}) all.add(line->box());
  for (const MouldPieces& pieces : {lower_pieces(rig), upper_pieces(rig)})
    for (const FixingBlock& block : fixing_of(pieces).blocks)
      for (const Segment& s : block.part.outline().segments())
        for (const double share : {0.0, 0.5}) {
          const Vec2 p = s.point(share);
          all.add(Vec2(composed(pieces.place, block.placed).point({p.x(), p.y(), 0}).head<2>()));
        }
  return all;
}

double stroke_of(const Halves& h, double top_caul) {
  const double pack = std::max(h.curves.over.box().high.y(), h.curves.inner.box().high.y());
  const double lowest = h.upper.box().low.y() - top_caul;
  return std::max(0.0, pack - lowest) + kOpenClear;
}

std::vector<Section> sections(const Rig& rig) {
  std::vector<Section> out;
  for (std::size_t i = 0; i < rig.stations.mid_planes.size(); ++i)
    out.push_back({rig.stations.mid_planes[i], rig.halves.lower, rig.halves.upper, rig.stations.strapped[i]});
  return out;
}

std::vector<Closure> closures(const Rig& rig) {
  const StrapSpec& straps = rig.job.straps;
  std::vector<Closure> out;
  double before = -INFINITY;
  for (const Section& section : sections(rig)) {
    if (!section.strapped) continue;
    const bool touch = section.z - before < straps.ratchet_width - kAtLeast;
    const bool staggered = touch && !(out.empty() || out.back().staggered);
    out.push_back({section.z, rig.loops.left, rig.loops.right, straps.tension, straps.kind, straps.width,
                   straps.ratchet, staggered, rig.loops.loop});
    before = section.z;
  }
  return out;
}

std::vector<Hardware> hardware(const Rig& rig, const PressPlan& plan) {
  const Job& job = rig.job;
  const int formers = int(rig.stations.mid_planes.size()), stations = int(plan.closures.size());
  const int borne = int(std::count(rig.stations.borne.begin(), rig.stations.borne.end(), true));
  std::vector<Hardware> out;
  const auto add = [&](const std::string& name, const std::string& use, int count) {
    if (count > 0) out.push_back({name, use, count});
  };
  const Loop& loop = rig.loops.loop;
  add(job.straps.kind,
      std::string(loop.pinned ? "strap from pin to pin" : "strap loop round both beams") + ", " +
          number(std::ceil(loop.open_length), 0) + " round with the press open, ratchet and tail besides",
      2 * stations);
  add("ratchet for " + job.straps.kind, "tightening, one to a loop", 2 * stations);
  if (loop.pinned)
    add("strap fitting that straddles a beam " + number(job.beams.width) + " wide, with a pin of " +
            number(job.straps.hole),
        "hooking straps to beams; the strap swivels on the pin", 4 * stations);
  const int screwed = job.formers.groove_depth ? stations : borne;
  add("screw " + number(job.beams.screw_diameter) + " x " + number(job.beams.screw_length),
      "beams to formers", 2 * screwed * int(rig.screws.size()));
  add("screw " + number(kCaulScrew) + " x " + number(rounded(job.caul.thickness + kCaulPilotDepth, 0)),
      "cauls to formers", formers * int(rig.bed.pilots.size() + rig.top.pilots.size()));
  add("steel pin of " + number(kPin), "locating pins", int(plan.pins.size()));
  add("stop " + number(kStopLength) + " x " + number(kStopHeight),
      "keeps a loop from sliding on its leaning beam",
      rig.halves.tilt != 0 && !loop.pinned ? 4 * stations : 0);
  return out;
}

void add_notes(const Rig& rig, PressPlan& plan) {
  if (!rig.stations.spacing.note.empty()) plan.notes.push_back(rig.stations.spacing.note);
  for (const std::string& land : rig.halves.lands) plan.notes.push_back(land);
  if (rig.halves.tilt != 0)
    plan.notes.push_back(
        "Beams lean by " + number(degrees(rig.halves.tilt), 1) + " degrees; straps stay along the pull" +
        (rig.loops.loop.pinned ? " and swivel on their pins." : ", held by a stop at each beam."));
  if (rig.job.caul.pitch)
    plan.notes.push_back("Slats are laid in one length across the width; their joints are not planned yet.");
  if (rig.job.press.guide_rollers)
    plan.notes.push_back(
        "press.guide_rollers has no meaning here: the straps run straight from beam to beam.");
  plan.notes.push_back("Hold the upper half by chocks or hoist before the last strap comes off.");
}

}  // namespace

Rig rig(const Job& job, const Panel& panel, const HalvesSpec& spec) {
  if (job.straps.use == StrapSpec::Use::no)
    throw geometry_error("straps.kind", "\"none\" leaves nothing that draws the two halves together",
                         "take it out, or name a strap");
  Rig out{job, panel, stations(station_spec(job, panel, true)), two_part::halves(spec), {}, {}, {}, 0, {}};
  out.bed = bed_caul(job, panel, out.halves.curves, out.halves.lower_mould);
  out.top = top_caul(job, panel, out.halves.curves, out.halves.upper_mould);
  out.screws = common_screws(out);
  const double hangs = job.caul.kind == CaulSpec::Kind::bare ? 0 : job.caul.thickness;
  out.stroke = stroke_of(out.halves, hangs);
  out.loops = two_part::loops({job, out.halves, out.screws, between_loops(out), out.stroke});
  return out;
}

PressPlan plan_of(const Rig& rig, const std::string& method) {
  const Job& job = rig.job;
  const Halves& h = rig.halves;
  PressPlan plan{.title = job.title,
                 .date = job.date,
                 .number = job.number,
                 .method = method,
                 .reason = {},
                 .panel = rig.panel,
                 .neutral = h.curves.neutral,
                 .sections = sections(rig),
                 .parts = {},
                 .bodies = {},
                 .closures = closures(rig),
                 .load = Load::seated,
                 .pull = {},
                 .seated = {},
                 .crown = {},
                 .opening = {0, rig.stroke},
                 .layers = layers(job, rig.panel, h, rig.bed),
                 .flats = {},
                 .pins = {},
                 .hardware = {},
                 .spacing = rig.stations.spacing,
                 .beam_depth = job.beams.depth,
                 .min_depth = job.formers.min_depth,
                 .strap_free = job.straps.ratchet + 20,
                 .uncovered_left = h.curves.top_from,
                 .uncovered_right = h.curves.over.girth() - h.curves.top_to,
                 .fitting_pitch = fitting_pitch(job, rig.panel, h.curves),
                 .foot_width = h.lower_mould.foot(),
                 .former_height = h.lower_mould.contact.box().high.y(),
                 .former_depth = h.lower_mould.contact.box().low.y(),
                 .foot_sloped = false,
                 .notes = {}};
  AssemblyBuilder assembly;
  add_mould(lower_pieces(rig), assembly, plan.notes);
  add_mould(upper_pieces(rig), assembly, plan.notes);
  for (const Closure& closure : plan.closures) add_stops(job, h, rig.loops, closure.z, assembly);
  assembly.add(panel_part(rig.panel, h.curves), {}, Group::panel);
  assembly.finish(plan);
  plan.pins = pins(job, rig.panel, h.curves, rig.bed, h.lower_mould.left_extend, plan.notes);
  plan.hardware = hardware(rig, plan);
  add_notes(rig, plan);
  return plan;
}

}  // namespace lamwright::two_part
