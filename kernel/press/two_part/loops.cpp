#include "kernel/press/two_part/loops.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::two_part {
namespace {

// How far beside the pull line the strap has to keep, to its own middle.
double reach_of(const Job& job, const Box2& inside) {
  const double line = job.press.pull.at;
  return std::max(line - inside.low.x(), inside.high.x() - line) + kLoopClear + job.straps.width / 2;
}

// Where a vertical strap at X crosses a beam's face that lies `drop` beyond its foot face, in the beam's own
// X. half: -1 lower, +1 upper.
double own_x(double x, double drop, int half, double tilt) {
  return (x + half * drop * std::sin(tilt)) / std::cos(tilt);
}

// The same point in the frame of the press.
Vec2 crossing(const Halves& halves, double x, double drop, int half) {
  const double foot = half < 0 ? 0 : halves.height;
  return {x, foot + x * std::tan(halves.tilt) + half * drop / std::cos(halves.tilt)};
}

TimberSpec beam_of(const LoopsSpec& spec, double left, double right, int half) {
  const BeamSpec& beams = spec.job.beams;
  const double tilt = spec.halves.tilt, anchor = spec.job.straps.pinned ? strap_drop(beams) : 0;
  // Loops cross both faces; one length serves both beams, so that they are the same part turned over.
  const double past = beams.depth * std::abs(std::sin(tilt));
  TimberSpec out{(left - past) / std::cos(tilt) - kBeamPastHole,
                 (right + past) / std::cos(tilt) + kBeamPastHole,
                 spec.screws,
                 {}};
  if (spec.job.straps.pinned)
    out.strap_holes = {own_x(left, anchor, half, tilt), own_x(right, anchor, half, tilt)};
  return out;
}

StrapEnd leg(const LoopsSpec& spec, double x) {
  const double drop = spec.job.straps.pinned ? strap_drop(spec.job.beams) : spec.job.beams.depth;
  const Vec2 top = crossing(spec.halves, x, drop, 1), bottom = crossing(spec.halves, x, drop, -1);
  return {top, bottom, top.y() - bottom.y(), 0, std::nullopt};
}

constexpr double kStopBore = kStopScrew + 0.5;

Part stop_part(const BeamSpec& beams) {
  std::vector<BoreSpec> bores;
  for (const double z : stop_screws(beams))
    bores.push_back(
        {BoreUse::stop_screw, kStopBore, std::nullopt, std::nullopt, {kStopLength / 2, 0, z}, {0, 1, 0}});
  return make_part({to_text(PartKind::stop),
                    PartKind::stop,
                    beams.timber_class + " " + number(kStopLength) + " x " + number(kStopHeight),
                    rectangle({0, 0}, {kStopLength, kStopHeight}),
                    beams.width,
                    {},
                    std::move(bores),
                    {},
                    false});
}

}  // namespace

Loops loops(const LoopsSpec& spec) {
  const double line = spec.job.press.pull.at, reach = reach_of(spec.job, spec.inside);
  Loops out;
  out.reach = reach;
  out.left = leg(spec, line - reach);
  out.right = leg(spec, line + reach);
  const bool pinned = spec.job.straps.pinned;
  const double run = std::max(out.left.run, out.right.run);
  const double across = pinned ? 0 : 2 * spec.job.beams.width;
  out.loop = {2 * run + across, 2 * (run + spec.stroke) + across, pinned};
  out.lower_beam = beam_of(spec, line - reach, line + reach, -1);
  out.upper_beam = beam_of(spec, line - reach, line + reach, 1);
  return out;
}

std::vector<double> stop_screws(const BeamSpec& beams) {
  const double quarter = beams.width / 4;
  if (quarter - kStopBore / 2 < kLeastWood - kAtLeast) return {beams.width / 2};
  return {quarter, beams.width - quarter};
}

void add_stops(const Job& job, const Halves& halves, const Loops& loops, double z,
               AssemblyBuilder& assembly) {
  if (halves.tilt == 0 || job.straps.pinned) return;
  const double width = job.beams.width, depth = job.beams.depth;
  const Part stop = stop_part(job.beams);
  const double edge = job.straps.width / 2 / std::cos(halves.tilt);
  // A loop wants to stand square to the beams: its lower end climbs, its upper end slides down.
  const double uphill = halves.tilt > 0 ? 1 : -1;
  for (const int half : {-1, 1})
    for (const StrapEnd* end : {&loops.left, &loops.right}) {
      const double at = own_x((half < 0 ? end->mark : end->leaves).x(), depth, half, halves.tilt);
      const double way = -half * uphill;  // from the strap to its stop, along the beam
      const double from = way > 0 ? at + edge : at - edge - kStopLength;
      const double low = half < 0 ? -depth - kStopHeight : depth;
      const Frame& level = halves.lower_place;  // the stop lies along it on either half
      const Vec3 foot = half < 0 ? level.origin : halves.upper_place.origin;
      assembly.add(stop,
                   {foot + from * level.x + low * level.y + Vec3(0, 0, z - width / 2), level.x, level.y},
                   half < 0 ? Group::lower : Group::upper);
    }
}

}  // namespace lamwright::two_part
