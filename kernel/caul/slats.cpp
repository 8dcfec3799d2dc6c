#include "kernel/caul/slats.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

double gap_at(const SlatSpec& spec, double joint) {
  if (spec.lagging == Lagging::close) return 0;
  if (spec.lagging == Lagging::open) return spec.gap;
  const auto beside = [&](double change) { return std::abs(joint - change) < 2 * spec.width - kSamePoint; };
  return std::any_of(spec.changes.begin(), spec.changes.end(), beside) ? 0 : spec.gap;
}

// Slats from the datum slat to one end (sense +1 right, -1 left), the datum slat itself left out.
std::vector<Slat> outward(const SlatSpec& spec, int sense, bool cut_last) {
  std::vector<Slat> slats;
  const double end = sense > 0 ? spec.girth : 0;
  double edge = spec.datum + sense * spec.width / 2;
  const double pin_at = spec.pin_at.value_or(spec.datum);
  bool pinned = sense > 0 ? pin_at < spec.datum : pin_at >= spec.datum;  // the pin stands on the other side
  while (true) {
    const double own = gap_at(spec, edge);
    const bool here = !pinned && sense * (edge - pin_at) >= -(spec.width + spec.gap) / 2;
    const double gap = here && own < spec.pin ? spec.pin_gap : own;
    pinned = pinned || here;
    const double near = edge + sense * gap;
    double far = near + sense * spec.width;
    if ((far - end) * sense > kSamePoint) {
      if (!cut_last || (end - near) * sense < kSamePoint) return slats;
      far = end;
    }
    slats.push_back({std::min(near, far), std::max(near, far)});
    edge = far;
  }
}

std::vector<Slat> laid(const SlatSpec& spec, bool cut_last) {
  Slat datum{spec.datum - spec.width / 2, spec.datum + spec.width / 2};
  if (datum.from < -kSamePoint || datum.to > spec.girth + kSamePoint) {
    if (!cut_last) return {};
    datum = {std::max(0.0, datum.from), std::min(spec.girth, datum.to)};
  }
  std::vector<Slat> slats = outward(spec, -1, cut_last);
  std::reverse(slats.begin(), slats.end());
  slats.push_back(datum);
  const std::vector<Slat> right = outward(spec, +1, cut_last);
  slats.insert(slats.end(), right.begin(), right.end());
  return slats;
}

}  // namespace

std::vector<Slat> whole_slats(const SlatSpec& spec) { return laid(spec, false); }
std::vector<Slat> covering_slats(const SlatSpec& spec) { return laid(spec, true); }

}  // namespace lamwright
