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

bool holds(const PilotSpec& spec, double station) { return !spec.holds || spec.holds(station); }

// From an end of the pack inward, the first place that holds a screw; nothing before the middle.
void add_end(const PilotSpec& spec, double from, double sense, std::vector<double>& stations) {
  constexpr double kStep = 5;
  for (double in = kEndInset; in < (spec.pack_to - spec.pack_from) / 2; in += kStep)
    if (holds(spec, from + sense * in)) return stations.push_back(from + sense * in);
}

std::vector<double> on_continuous(const PilotSpec& spec) {
  std::vector<double> stations{spec.datum};
  stations.insert(stations.end(), spec.changes.begin(), spec.changes.end());
  std::erase_if(stations, [&](double s) { return !holds(spec, s); });
  add_end(spec, spec.pack_from, 1, stations);
  add_end(spec, spec.pack_to, -1, stations);
  return stations;
}

std::vector<double> wished(const PilotSpec& spec) {
  if (spec.slats.empty()) return on_continuous(spec);
  std::vector<double> stations;
  if (holds(spec, spec.datum)) stations.push_back(spec.datum);
  std::vector<Slat> wide;
  for (const Slat& slat : spec.slats)
    if (slat.width() >= kLeastScrewed && holds(spec, slat.middle())) wide.push_back(slat);
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
