#include "kernel/press/mould/caul.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/caul/pilots.hpp"
#include "kernel/press/mould/narrow.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// How far apart along the contact edge two pilots keep 5 of wood all the way down: under a crown their tips
// draw together, by the chord between them.
double least_apart(const Profile& contact) {
  constexpr double kApart = kCaulPilot + kLeastWood;
  constexpr double kMost = 10 * kApart;  // round a radius of little more than the depth one pilot is enough
  double most = kApart;
  for (const Run& run : contact.runs()) {
    if (run.curvature <= 0) continue;
    const double radius = 1 / run.curvature, at_tips = radius - kCaulPilotDepth;
    const double half = kApart / 2;
    most = std::max(most, at_tips > half ? 2 * radius * std::asin(half / at_tips) : kMost);
  }
  return std::min(most, kMost);
}

// A pilot square to the contact edge keeps 5 of wood to the mould's sides and foot.
bool stays_in_wood(const Mould& mould, double station) {
  const Pose pose = mould.contact.at(std::clamp(station, 0.0, mould.contact.girth()));
  const double room = kCaulPilot / 2 + kLeastWood;
  const Vec2 tip = pose.point - kCaulPilotDepth * pose.normal();
  if (tip.y() < room) return false;
  for (const auto* side : {&mould.left, &mould.right}) {
    const int outward = side == &mould.left ? -1 : 1;
    for (int i = 0; i <= 6; ++i) {
      const Vec2 p = pose.point + i / 6.0 * (tip - pose.point);
      if (outward * (side_at(*side, p.y()) - p.x()) < -kAtLeast) return false;
      for (std::size_t k = 0; k + 1 < side->size(); ++k)
        if (distance(line((*side)[k], (*side)[k + 1]), p) < room - kAtLeast) return false;
    }
  }
  return true;
}

std::vector<double> pilots(const Job& job, const Mould& mould, double datum, std::vector<double> changes,
                           const std::vector<Slat>& slats) {
  if (job.caul.kind == CaulSpec::Kind::bare) return {};
  return pilot_stations({mould.left_extend, mould.contact.girth() - mould.right_extend, datum,
                         std::move(changes), slats, least_apart(mould.contact),
                         [&](double station) { return stays_in_wood(mould, station); }});
}

}  // namespace

std::string caul_screw(const CaulSpec& caul) {
  return "screw " + number(kCaulScrew) + " x " + number(rounded(caul.thickness + kCaulPilotDepth, 0));
}

LaidCaul bed_caul(const Job& job, const Panel& panel, const PressCurves& curves, const Mould& lower) {
  const double d = -(curves.bed + panel.neutral_height), liner = job.caul.liner;
  const auto on_contact = [&](double s) { return lower.left_extend + offset_station(curves.neutral, s, d); };
  std::vector<double> changes;
  for (const double s : curves.neutral.shape_changes()) changes.push_back(on_contact(s));
  const double datum = on_contact(curves.datum);
  LaidCaul bed;
  std::vector<Slat> over_contact;
  if (job.caul.pitch) {
    const Profile line = offset(lower.contact, liner, "bed caul");
    const auto on_line = [&](double s) { return offset_station(lower.contact, s, liner); };
    std::vector<double> there;
    for (const double s : changes) there.push_back(on_line(s));
    SlatSpec spec = slat_spec(job.caul, line, on_line(datum), on_line(on_contact(curves.pin)), there);
    spec.zones = tight_zones(job.caul, line, job.caul.thickness, panel.cover);
    bed.slats = covering_slats(spec);
    for (const Slat& slat : bed.slats)
      over_contact.push_back(
          {offset_station(line, slat.from, -liner), offset_station(line, slat.to, -liner)});
  }
  bed.pilots = pilots(job, lower, datum, changes, over_contact);
  return bed;
}

LaidCaul top_caul(const Job& job, const Panel& panel, const PressCurves& curves, const Mould& upper) {
  const double d = curves.above + panel.thickness - panel.neutral_height, girth = upper.contact.girth();
  const auto on_contact = [&](double s) {
    return girth - upper.right_extend - offset_station(curves.neutral, s, d);
  };
  const auto under = [&](double s) {
    return girth - upper.right_extend - offset_station(curves.over, s, curves.above - panel.cover);
  };
  std::vector<double> changes;
  for (const double s : curves.neutral.shape_changes()) changes.push_back(on_contact(s));
  LaidCaul top;
  for (auto slat = curves.top_slats.rbegin(); slat != curves.top_slats.rend(); ++slat)
    top.slats.push_back({under(slat->to), under(slat->from)});
  top.pilots = pilots(job, upper, on_contact(curves.datum), changes, top.slats);
  return top;
}

}  // namespace lamwright
