#include "kernel/press/mould/foot.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr double kPilotShare = 0.7;  // of the screw's diameter

// Distance of a pilot's axis, upright at X from the foot to `reach`, from an obstacle's.
double apart(double x, const Obstacle& o, double reach) {
  const Segment pilot = line({x, 0}, {x, reach});
  if ((o.to - o.from).norm() < kSamePoint) return distance(pilot, o.from);
  const Segment bore = line(o.from, o.to);
  if (!crossings(pilot, bore).empty()) return 0;
  return std::min(
      {distance(pilot, o.from), distance(pilot, o.to), distance(bore, pilot.from), distance(bore, pilot.to)});
}

// The room for the middle screw.
Stretch middle_room(const FootSpec& spec, double pilot) {
  const double room = pilot + kLeastWood, reach = spec.job.beams.screw_reach;
  const Mould& mould = spec.mould;
  const double low = std::max(side_at(mould.left, 0), side_at(mould.left, reach)) + room,
               high = std::min(side_at(mould.right, 0), side_at(mould.right, reach)) - room;
  return {std::max(spec.from + kScrewFromEnd, low), std::min(spec.to - kScrewFromEnd, high)};
}

}  // namespace

FootScrews::FootScrews(const FootSpec& spec)
    : spec_(spec),
      from_(spec.from + kScrewFromEnd),
      to_(spec.to - kScrewFromEnd),
      pilot_(kPilotShare * spec.job.beams.screw_diameter / 2),
      centre_(0),
      between_(std::max(spec.job.beams.counterbore, spec.job.beams.screw_diameter + 1) + kLeastWood) {
  const Stretch room = middle_room(spec, pilot_);
  if (room.from > kAtLeast || room.to < -kAtLeast) centre_ = (room.from + room.to) / 2;
  if (!spec.also || stands(centre_)) return;
  for (double step = 1; step <= spec.to - spec.from; ++step)
    for (const double x : {centre_ - step, centre_ + step})
      if (x >= room.from && x <= room.to && stands(x)) {
        centre_ = x;
        return;
      }
}

bool FootScrews::inside_sides(double x) const {
  const double room = pilot_ + kLeastWood, reach = spec_.job.beams.screw_reach;
  for (const double y : {0.0, reach / 2, reach})
    if (x < side_at(spec_.mould.left, y) || x > side_at(spec_.mould.right, y)) return false;
  for (const auto* side : {&spec_.mould.left, &spec_.mould.right})
    for (std::size_t i = 0; i + 1 < side->size(); ++i)
      for (const double y : {reach / 2, reach})
        if (distance(line((*side)[i], (*side)[i + 1]), Vec2(x, y)) < room - kAtLeast) return false;
  return true;
}

bool FootScrews::stands(double x) const {
  if (!inside_sides(x)) return false;
  for (const Obstacle& o : spec_.obstacles)
    if (apart(x, o, spec_.job.beams.screw_reach) < o.radius + pilot_ + kLeastWood - kAtLeast) return false;
  return !spec_.also || spec_.also(x);
}

std::vector<double> FootScrews::wished() const {
  const double pitch = spec_.job.beams.screw_pitch;
  std::vector<double> screws{centre_};
  for (double x = centre_ + pitch; x <= to_ + kAtLeast; x += pitch) screws.push_back(x);
  for (double x = centre_ - pitch; x >= from_ - kAtLeast; x -= pitch) screws.push_back(x);
  std::sort(screws.begin(), screws.end());
  return screws;
}

std::vector<double> FootScrews::laid() const { return moved(wished(), {}, 0); }

std::vector<double> FootScrews::moved(const std::vector<double>& screws, const std::vector<double>& holes,
                                      double apart) const {
  const auto free = [&](double x) {
    return stands(x) && std::none_of(holes.begin(), holes.end(),
                                     [&](double hole) { return std::abs(hole - x) < apart - kAtLeast; });
  };
  std::vector<double> out;
  for (const double screw : screws) {
    if (screw == centre_ || free(screw)) {
      out.push_back(screw);
      continue;
    }
    for (double step = 1; step < 150; ++step) {
      const double sense = screw > centre_ ? step : -step;
      const auto fits = [&](double x) {
        return x >= from_ - kAtLeast && x <= to_ + kAtLeast && std::abs(x - centre_) >= between_ && free(x) &&
               std::none_of(out.begin(), out.end(), [&](double o) { return std::abs(o - x) < between_; });
      };
      if (fits(screw - sense) || fits(screw + sense)) {
        out.push_back(fits(screw - sense) ? screw - sense : screw + sense);
        break;
      }
    }
  }
  return out;
}

}  // namespace lamwright
