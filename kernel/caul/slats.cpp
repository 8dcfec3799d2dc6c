#include "kernel/caul/slats.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// The slats of one place: the caul's own, or a zone's.
struct Lath {
  double width = 0, gap = 0;
};

// Ends of zones count as outside.
bool reaches_into(const SlatZone& zone, double from, double to) {
  return to > zone.from + kSamePoint && from < zone.to - kSamePoint;
}

double gap_at(const SlatSpec& spec, double joint, const Lath& lath) {
  if (spec.lagging == Lagging::close) return 0;
  if (spec.lagging == Lagging::open) return lath.gap;
  const auto beside = [&](double change) { return std::abs(joint - change) < 2 * lath.width - kSamePoint; };
  return std::any_of(spec.changes.begin(), spec.changes.end(), beside) ? 0 : lath.gap;
}

// What lies between two stations where one of the caul's own slats would.
Lath lath_between(const SlatSpec& spec, double from, double to) {
  Lath lath{spec.width, spec.gap};
  for (const SlatZone& zone : spec.zones)
    if (zone.width < lath.width && reaches_into(zone, from, to)) lath = {zone.width, zone.gap};
  return lath;
}

// The gap after `edge`: the pin may stand in it.
struct Joint {
  double gap = 0;
  bool pinned = false;
};

Joint joint_at(const SlatSpec& spec, double edge, int sense, const Lath& lath, bool pinned) {
  const double pin_at = spec.pin_at.value_or(spec.datum), own = gap_at(spec, edge, lath);
  const bool here = !pinned && sense * (edge - pin_at) >= -(lath.width + lath.gap) / 2;
  return {here && own < spec.pin ? spec.pin_gap : own, pinned || here};
}

// Where no slat fits beyond the last gap, the last slat is moved out to the end instead: its gap grows by
// less than another one, and lies where the pack is trimmed.
std::vector<Slat> flush(std::vector<Slat> slats, double end, int sense) {
  if (slats.empty()) return slats;
  const double by = sense > 0 ? end - slats.back().to : end - slats.back().from;
  slats.back() = {slats.back().from + by, slats.back().to + by};
  return slats;
}

// Slats from the datum slat's edge to one end (sense +1 right, -1 left), the datum slat itself left out.
std::vector<Slat> outward(const SlatSpec& spec, double edge, int sense, bool cut_last) {
  std::vector<Slat> slats;
  const double end = sense > 0 ? spec.girth : 0, pin_at = spec.pin_at.value_or(spec.datum);
  bool pinned = sense > 0 ? pin_at < spec.datum : pin_at >= spec.datum;  // the pin stands on the other side
  while (true) {
    const Lath own{spec.width, spec.gap};
    const double reach = edge + sense * joint_at(spec, edge, sense, own, pinned).gap;
    const double across = reach + sense * own.width;
    const Lath lath = lath_between(spec, std::min(reach, across), std::max(reach, across));
    const Joint joint = joint_at(spec, edge, sense, lath, pinned);
    pinned = joint.pinned;
    const double near = edge + sense * joint.gap;
    double far = near + sense * lath.width;
    if ((far - end) * sense > kSamePoint) {
      if (!cut_last) return slats;
      if ((end - near) * sense < kSamePoint) return flush(std::move(slats), end, sense);
      far = end;
    }
    slats.push_back({std::min(near, far), std::max(near, far)});
    edge = far;
  }
}

std::vector<Slat> laid(const SlatSpec& spec, bool cut_last) {
  const double half = spec.width / 2;
  const double width = lath_between(spec, spec.datum - half, spec.datum + half).width;
  Slat datum{spec.datum - width / 2, spec.datum + width / 2};
  const Slat uncut = datum;
  if (datum.from < -kSamePoint || datum.to > spec.girth + kSamePoint) {
    if (!cut_last) return {};
    datum = {std::max(0.0, datum.from), std::min(spec.girth, datum.to)};
  }
  std::vector<Slat> slats = outward(spec, uncut.from, -1, cut_last);
  std::reverse(slats.begin(), slats.end());
  slats.push_back(datum);
  const std::vector<Slat> right = outward(spec, uncut.to, +1, cut_last);
  slats.insert(slats.end(), right.begin(), right.end());
  return slats;
}

}  // namespace

std::vector<Slat> whole_slats(const SlatSpec& spec) { return laid(spec, false); }
std::vector<Slat> covering_slats(const SlatSpec& spec) { return laid(spec, true); }

}  // namespace lamwright
