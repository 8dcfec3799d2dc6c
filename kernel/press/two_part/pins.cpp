#include "kernel/press/two_part/pins.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

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
  // Whether a pin whose axis crosses the neutral line there stands between two slats, and comes in between
  // them from `drift` beside it.
  bool free_at(const Profile& neutral, double station, double drift) const {
    const double s = before + offset_station(neutral, station, above_neutral);
    const double from = s + std::min(0.0, drift) - kPin / 2, to = s + std::max(0.0, drift) + kPin / 2;
    for (const Slat& slat : slats)
      if (slat.to > from + kAtLeast && slat.from < to - kAtLeast) return false;
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

double lean(const Profile& neutral, double station) { return neutral.at(station).heading; }

// Where a pin's tip meets the face opposite, round the curve from where it stands in the end: the halves
// close along the pull, the pin is square to the pack.
double drift(const PressCurves& c, double station) {
  const double aside = kPinProud * std::tan(lean(c.neutral, station));
  return c.pin_above ? aside : -aside;
}

std::optional<Place> between_slats(const PressCurves& c, const Laid& home, const Laid& other, double pitch) {
  std::vector<double> gaps = home.gaps();
  const auto first = nearest(gaps, c.pin);
  if (!first) return std::nullopt;
  std::erase_if(gaps, [&](double s) { return !other.free_at(c.neutral, s, drift(c, s)); });
  const auto both = nearest(gaps, c.pin);
  if (both && std::abs(*both - c.pin) <= std::abs(*first - c.pin) + pitch + kSamePoint)
    return Place{*both, false};
  return Place{*first, true};
}

// The outer side of the pack over its neutral line.
double over_neutral(const Panel& panel) { return panel.thickness + panel.cover - panel.neutral_height; }

std::optional<Place> place_of(const Job& job, const Panel& panel, const PressCurves& c, const LaidCaul& bed,
                              double extend) {
  if (!job.caul.pitch) return Place{c.pin, true};
  const Profile bed_line = offset(c.contact, job.caul.liner, "bed caul");
  const Laid lower{bed.slats, bed_line, extend, job.caul.liner - c.bed - panel.neutral_height, job.caul};
  const Laid upper{c.top_slats, c.over, 0, over_neutral(panel), job.caul};
  return between_slats(c, c.pin_above ? upper : lower, c.pin_above ? lower : upper, *job.caul.pitch);
}

Pin pin_at(const CaulSpec& caul, const Panel& panel, const PressCurves& c, const Place& place) {
  // A tip that gets stuck keeps the press open: 3 to spare, or what a thin caul has, but never less than 1.
  constexpr double kSpare = 3, kLeastSpare = 1;
  const Vec2 at = c.over.point(offset_station(c.neutral, place.station, over_neutral(panel)));
  Pin pin{
      {at.x(), at.y(), 0}, kPin, c.pin_above ? Layer::Kind::top_caul : Layer::Kind::bed_caul, place.recess};
  if (!place.recess) return pin;
  // Cut with its middle at the pin, for a recess to one side would be cut to the wrong one.
  pin.recess_width = std::ceil(kPinGap + 2 * std::abs(drift(c, place.station)) - kAtLeast);
  pin.recess_depth = std::clamp(caul.thickness, kPinProud + kLeastSpare, kPinProud + kSpare);
  return pin;
}

std::string recess_note(const CaulSpec& caul, const Pin& pin, double lean) {
  const bool low = pin.caul == Layer::Kind::bed_caul, sheathed = caul.kind == CaulSpec::Kind::sheathed;
  const std::string lower = sheathed ? "lower sheathing" : "bed caul",
                    upper = sheathed ? "upper sheathing" : "top caul",
                    size =
                        ", " + number(pin.recess_width) + " wide and " + number(pin.recess_depth) + " deep";
  const std::string slanting = pin.recess_width > kPinGap
                                   ? " So wide lets them in aslant: they lean " +
                                         number(degrees(std::abs(lean)), 1) + " degrees from the pull."
                                   : "";
  if (caul.pitch)
    return "Recess the slats opposite the locating pins" + size + ": no gap lies there." + slanting;
  return "Recess the " + (low ? upper : lower) + " opposite the locating pins" + size + ", and bore the " +
         (low ? lower : upper) + " " + number(kPin) + " wide for them: neither has a gap." + slanting;
}

// Why no pins can stand in the press; empty when they can.
std::string kept_out(const Job& job, const Panel& panel, const std::optional<Place>& place, double lean) {
  if (panel.trim < kPinTrim - kAtLeast) return "Trim below " + number(kPinTrim) + ", so no locating pins";
  if (job.caul.kind == CaulSpec::Kind::bare) return "A bare mould has no gap for locating pins";
  if (!place) return "No gap between the slats takes a locating pin";
  if (std::abs(lean) > kSteepestPin)
    return "Locating pins would lean " + number(degrees(std::abs(lean)), 1) +
           " degrees from the pull, over " + number(degrees(kSteepestPin));
  return {};
}

}  // namespace

LocatingPins locating_pins(const Job& job, const Panel& panel, const PressCurves& c, const LaidCaul& bed,
                           double extend) {
  const auto place = place_of(job, panel, c, bed, extend);
  const double leaning = place ? lean(c.neutral, place->station) : 0;
  if (const std::string why = kept_out(job, panel, place, leaning); !why.empty())
    return {{}, {why + ": hold pack and cauls by hand until the press has closed on them."}};
  LocatingPins out;
  Pin pin = pin_at(job.caul, panel, c, *place);
  for (const double z : {panel.trim / 2, panel.blank_width() - panel.trim / 2}) {
    pin.at.z() = z;
    out.pins.push_back(pin);
  }
  if (pin.recess) out.notes.push_back(recess_note(job.caul, pin, leaning));
  return out;
}

double room_over_pins(const Panel& panel, const Profile& neutral, const std::vector<Pin>& pins) {
  const double pack = panel.thickness + 2 * panel.cover;
  double most = 0;
  for (const Pin& pin : pins) {
    if (pin.caul != Layer::Kind::bed_caul) continue;
    const double leaning = lean(neutral, neutral.nearest(pin.at.head<2>()).station);
    most = std::max(most, (pack + kPinProud) / std::cos(leaning));
  }
  return most;
}

}  // namespace lamwright::two_part
