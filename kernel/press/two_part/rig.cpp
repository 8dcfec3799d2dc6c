#include "kernel/press/two_part/rig.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/mould/foot.hpp"
#include "kernel/press/two_part/hardware.hpp"
#include "kernel/press/two_part/layers.hpp"
#include "kernel/press/two_part/notes.hpp"
#include "kernel/profile/offset.hpp"
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
          h.lower_place,
          rig.lower_fixing,
          false,
          "lower"};
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
          rig.upper_fixing,
          true,
          "upper"};
}

// What lies between the loops: both moulds, blocks beside the formers, the bed caul, whose ends stand square
// to the contact edge, the pack.
Box2 between_loops(const Rig& rig) {
  Box2 all = rig.halves.box();
  all.add(offset(rig.halves.lower, rig.job.caul.thickness + rig.job.caul.liner, "bed caul").box());
  for (const Profile* line : {&rig.halves.curves.inner, &rig.halves.curves.outer}) all.add(line->box());
  for (const auto& [fixing, place] :
       {std::pair<const FixingBlocks&, const Frame&>{rig.lower_fixing, rig.halves.lower_place},
        {rig.upper_fixing, rig.halves.upper_place}})
    for (const FixingBlock& block : fixing.blocks)
      for (const Segment& s : block.part.outline().segments())
        for (const double share : {0.0, 0.5}) {
          const Vec2 p = s.point(share);
          all.add(Vec2(composed(place, block.placed).point({p.x(), p.y(), 0}).head<2>()));
        }
  return all;
}

double stroke_of(const Rig& rig) {
  const Halves& h = rig.halves;
  const double hangs =
      h.curves.above - rig.panel.cover;  // liner, sheathing and caul on the upper contact edge
  const double pack = std::max(h.curves.over.box().high.y(), h.curves.inner.box().high.y());
  const double lowest = h.upper.box().low.y() - hangs;
  return std::max({0.0, pack - lowest, room_over_pins(rig.panel, h.curves.neutral, rig.located.pins)}) +
         kOpenClear;
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

}  // namespace

Rig rig(const Job& job, const Panel& panel, const HalvesSpec& spec) {
  if (job.straps.use == StrapSpec::Use::no)
    throw geometry_error("straps.kind", "\"none\" leaves nothing that draws the two halves together",
                         "take it out, or name a strap");
  Rig out{job,
          panel,
          stations(station_spec(job, panel, true, Moulds::both)),
          two_part::halves(spec),
          {},
          {},
          {},
          {},
          {},
          0,
          {},
          {}};
  out.bed = bed_caul(job, panel, out.halves.curves, out.halves.lower_mould);
  out.top = top_caul(job, panel, out.halves.curves, out.halves.upper_mould);
  out.lower_fixing = fixing_of(job, out.halves.lower_mould, out.bed);
  out.upper_fixing = fixing_of(job, out.halves.upper_mould, out.top);
  out.screws = common_screws(out);
  out.located = locating_pins(job, panel, out.halves.curves, out.bed, out.halves.lower_mould.left_extend);
  out.stroke = stroke_of(out);
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
                 .leaning = {},
                 .opening = {0, rig.stroke},
                 .layers = layers(job, rig.panel, h, rig.bed),
                 .flats = {},
                 .pins = rig.located.pins,
                 .hardware = {},
                 .spacing = rig.stations.spacing,
                 .beam_depth = job.beams.depth,
                 .min_depth = job.formers.min_depth,
                 .strap_free = job.straps.ratchet + 20,
                 .uncovered_left = h.curves.top_from,
                 .uncovered_right = h.curves.over.girth() - h.curves.top_to,
                 .fitting_pitch = fitting_pitch(job, rig.panel, h.curves),
                 .foot_width = std::min(h.lower_mould.foot(), h.upper_mould.foot()),
                 .foot_half = std::min({-h.lower_mould.foot_left(), h.lower_mould.foot_right(),
                                        -h.upper_mould.foot_left(), h.upper_mould.foot_right()}),
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
  plan.hardware = hardware(rig, plan);
  for (const std::string& note : rig.located.notes) plan.notes.push_back(note);
  for (std::string& note : notes(rig)) plan.notes.push_back(std::move(note));
  return plan;
}

}  // namespace lamwright::two_part
