#include "kernel/press/two_part/pins.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::two_part {
namespace {

// Middles of the gaps that a pin fits into.
std::vector<double> gaps(const std::vector<Slat>& slats) {
  std::vector<double> out;
  for (std::size_t i = 0; i + 1 < slats.size(); ++i)
    if (slats[i + 1].from - slats[i].to >= kPin - kAtLeast)
      out.push_back((slats[i].to + slats[i + 1].from) / 2);
  return out;
}

}  // namespace

std::vector<Pin> pins(const Job& job, const Panel& panel, const PressCurves& curves,
                      std::vector<std::string>& notes) {
  const std::string by_hand = "hold pack and cauls by hand until the press has closed on them.";
  if (panel.trim <= 0) {
    notes.push_back("No trim, so no locating pins: " + by_hand);
    return {};
  }
  if (job.caul.kind == CaulSpec::Kind::bare) {
    notes.push_back("A bare mould has no gap for locating pins: " + by_hand);
    return {};
  }
  double station = highest_station(curves.over);
  if (job.caul.pitch) {
    const std::vector<double> free = gaps(curves.top_slats);
    if (free.empty()) {
      notes.push_back("No gap between the slats takes a locating pin: " + by_hand);
      return {};
    }
    station = *std::min_element(free.begin(), free.end(), [&](double a, double b) {
      return std::abs(a - station) < std::abs(b - station) - kSamePoint;
    });
  }
  const Vec2 at = curves.over.point(station);
  std::vector<Pin> out;
  for (const double z : {panel.trim / 2, panel.blank_width() - panel.trim / 2})
    out.push_back({{at.x(), at.y(), z}, kPin});
  return out;
}

}  // namespace lamwright::two_part
