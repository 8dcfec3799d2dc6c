#include "exporters/html/steps/datum.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/mould/curves.hpp"

namespace lamwright::html::bench {

std::string datum_run(const PressPlan& plan, Layer::Kind caul) {
  const auto layer = std::find_if(plan.layers.begin(), plan.layers.end(), [&](const Layer& each) {
    return each.kind == caul && !each.slats.empty();
  });
  if (layer == plan.layers.end()) return {};
  const double at = layer->inner.nearest(plan.neutral.point(datum_station(plan.neutral))).station;
  const auto away = [&](const Slat& slat) { return std::abs((slat.from + slat.to) / 2 - at); };
  const auto nearest = std::min_element(layer->slats.begin(), layer->slats.end(),
                                        [&](const Slat& a, const Slat& b) { return away(a) < away(b); });
  return std::to_string(nearest - layer->slats.begin() + 1);
}

}  // namespace lamwright::html::bench
