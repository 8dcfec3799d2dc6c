#include "kernel/caul/pilots.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr double kEndInset = 15;  // of a continuous caul's end screws
constexpr double kLeastScrewed =
    15;  // narrowest slat that holds a screw without splitting: common practice, no source

double nearest_middle(const std::vector<Slat>& slats, double station) {
  const auto nearer = [&](const Slat& a, const Slat& b) {
    return std::abs(a.middle() - station) < std::abs(b.middle() - station) - kSamePoint;
  };
  return std::min_element(slats.begin(), slats.end(), nearer)->middle();
}

std::vector<double> wished(const PilotSpec& spec) {
  std::vector<double> stations{spec.datum};
  if (spec.slats.empty()) {
    stations.insert(stations.end(), spec.changes.begin(), spec.changes.end());
    stations.push_back(spec.pack_from + kEndInset);
    stations.push_back(spec.pack_to - kEndInset);
    return stations;
  }
  std::vector<Slat> wide;
  for (const Slat& slat : spec.slats)
    if (slat.width() >= kLeastScrewed) wide.push_back(slat);
  if (wide.empty()) return stations;
  for (const double change : spec.changes) stations.push_back(nearest_middle(wide, change));
  stations.push_back(wide.front().middle());
  stations.push_back(wide.back().middle());
  return stations;
}

}  // namespace

std::vector<double> pilot_stations(const PilotSpec& spec) {
  std::vector<double> kept;
  for (const double station : wished(spec)) {
    const auto near = [&](double other) { return std::abs(other - station) < spec.least_apart - kSamePoint; };
    if (std::none_of(kept.begin(), kept.end(), near)) kept.push_back(station);
  }
  std::sort(kept.begin(), kept.end());
  return kept;
}

}  // namespace lamwright
