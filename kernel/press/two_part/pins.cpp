#include "kernel/press/two_part/pins.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::two_part {
namespace {

// The slats of one caul and where they lie beside the neutral line.
struct Laid {
  const std::vector<Slat>& slats;
  const Profile& line;   // what their stations run along, less `before`
  double before;         // stations of the slats begin this far before the line
  double above_neutral;  // distance of the line
  const CaulSpec& caul;

  double on_neutral(double station) const {
    return offset_station(line, std::clamp(station - before, 0.0, line.girth()), -above_neutral);
  }
  // Whether a pin whose axis crosses the neutral line there stands between two slats.
  bool free_at(const Profile& neutral, double station) const {
    const double s = before + offset_station(neutral, station, above_neutral);
    for (const Slat& slat : slats)
      if (slat.to > s - kPin / 2 + kAtLeast && slat.from < s + kPin / 2 - kAtLeast) return false;
    return true;
  }
  // Middles of the gaps that a pin fits into, on the neutral line, within the pack.
  std::vector<double> gaps() const {
    std::vector<double> out;
    for (std::size_t i = 0; i + 1 < slats.size(); ++i) {
      const double middle = (slats[i].to + slats[i + 1].from) / 2;
      const bool in_pack = middle > before && middle < before + line.girth();
      const double clear = slats[i + 1].from - slats[i].to - closing_up(caul, line, middle - before);
      if (in_pack && clear >= kPin - kAtLeast) out.push_back(on_neutral(middle));
    }
    return out;
  }
};

std::optional<double> nearest(const std::vector<double>& stations, double to) {
  const auto found = std::min_element(stations.begin(), stations.end(), [&](double a, double b) {
    return std::abs(a - to) < std::abs(b - to) - kSamePoint;
  });
  if (found == stations.end()) return std::nullopt;
  return *found;
}

struct Place {
  double station = 0;
  bool recess = false;
};

std::optional<Place> between_slats(const PressCurves& c, const Laid& home, const Laid& other, double pitch) {
  std::vector<double> gaps = home.gaps();
  const auto first = nearest(gaps, c.pin);
  if (!first) return std::nullopt;
  std::erase_if(gaps, [&](double s) { return !other.free_at(c.neutral, s); });
  const auto both = nearest(gaps, c.pin);
  if (both && std::abs(*both - c.pin) <= std::abs(*first - c.pin) + pitch + kSamePoint)
    return Place{*both, false};
  return Place{*first, true};
}

}  // namespace

std::vector<Pin> pins(const Job& job, const Panel& panel, const PressCurves& c, const LaidCaul& bed,
                      double extend, std::vector<std::string>& notes) {
  const std::string by_hand = "hold pack and cauls by hand until the press has closed on them.";
  if (panel.trim < kPinTrim - kAtLeast) {
    notes.push_back("Trim below " + number(kPinTrim) + ", so no locating pins: " + by_hand);
    return {};
  }
  if (job.caul.kind == CaulSpec::Kind::bare) {
    notes.push_back("A bare mould has no gap for locating pins: " + by_hand);
    return {};
  }
  const double over = panel.thickness + panel.cover - panel.neutral_height;
  Place place{c.pin, false};
  if (job.caul.pitch) {
    const Profile bed_line = offset(c.contact, job.caul.liner, "bed caul");
    const Laid lower{bed.slats, bed_line, extend, job.caul.liner - c.bed - panel.neutral_height, job.caul};
    const Laid upper{c.top_slats, c.over, 0, over, job.caul};
    const auto found =
        between_slats(c, c.pin_above ? upper : lower, c.pin_above ? lower : upper, *job.caul.pitch);
    if (!found) {
      notes.push_back("No gap between the slats takes a locating pin: " + by_hand);
      return {};
    }
    place = *found;
  }
  if (place.recess)
    notes.push_back("Recess the slats opposite the locating pins, " + number(kPinGap) +
                    " wide and 8 deep: no gap lies there.");
  const Vec2 at = c.over.point(offset_station(c.neutral, place.station, over));
  const Layer::Kind caul = c.pin_above ? Layer::Kind::top_caul : Layer::Kind::bed_caul;
  std::vector<Pin> out;
  for (const double z : {panel.trim / 2, panel.blank_width() - panel.trim / 2})
    out.push_back({{at.x(), at.y(), z}, kPin, caul, place.recess});
  return out;
}

}  // namespace lamwright::two_part
