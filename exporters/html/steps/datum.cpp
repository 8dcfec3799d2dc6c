#include "exporters/html/steps/datum.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/mould/curves.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::html::bench {
namespace {

std::vector<Layer>::const_iterator slats_of(const PressPlan& plan, Layer::Kind caul) {
  return std::find_if(plan.layers.begin(), plan.layers.end(),
                      [&](const Layer& each) { return each.kind == caul && !each.slats.empty(); });
}

}  // namespace

std::string datum_run(const PressPlan& plan, Layer::Kind caul) {
  const auto layer = slats_of(plan, caul);
  if (layer == plan.layers.end()) return {};
  const double at = layer->inner.nearest(plan.neutral.point(datum_station(plan.neutral))).station;
  const auto away = [&](const Slat& slat) { return std::abs((slat.from + slat.to) / 2 - at); };
  const auto nearest = std::min_element(layer->slats.begin(), layer->slats.end(),
                                        [&](const Slat& a, const Slat& b) { return away(a) < away(b); });
  return std::to_string(nearest - layer->slats.begin() + 1);
}

std::vector<std::string> recessed_runs(const PressPlan& plan, const Pin& pin) {
  const bool low = pin.caul == Layer::Kind::bed_caul;
  const auto layer = slats_of(plan, low ? Layer::Kind::top_caul : Layer::Kind::bed_caul);
  if (layer == plan.layers.end()) return {};
  const double at = layer->inner.nearest(pin.at.head<2>()).station, half = pin.recess_width / 2;
  std::vector<std::string> out;
  for (std::size_t i = 0; i < layer->slats.size(); ++i)
    if (layer->slats[i].from < at + half - kAtLeast && layer->slats[i].to > at - half + kAtLeast)
      out.push_back(std::to_string(i + 1));
  return out;
}

}  // namespace lamwright::html::bench
