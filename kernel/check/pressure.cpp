#include "kernel/check/pressure.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/slat_bed.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr double kGirthStep = 3 * kPi / 180;  // turn from station to station
constexpr double kFlatStep = 50;

std::vector<Patch> strap_loads(const Job& job, const PressPlan& plan, Moulds moulds) {
  std::vector<double> planes;
  std::vector<bool> strapped;
  for (const Section& section : plan.sections) {
    planes.push_back(section.z);
    strapped.push_back(section.strapped);
  }
  return loads(planes, strapped, moulds, load_width(job, moulds), 1);
}

// Boards without gaps are a block: it carries all along the width, and the upper one presses all along it.
void as_block(SpreadingSpec& slats, Moulds moulds, double straps) {
  slats.lower = rigid_base(slats.bed, slats.supports[1] - slats.supports[0]);
  if (moulds == Moulds::lower) return;
  slats.loads.clear();
  slats.even = straps / slats.width;
}

// Mean pressure over the width at a station of run i of the neutral line, and what spreads it.
struct Pressed {
  double mean = 0;
  const Spreading* spread = nullptr;  // null: not pressed
  bool clamped = false;               // by pressing beams
};

class Pressing {
 public:
  Pressing(const Job& job, const PressPlan& plan)
      : plan_(plan), pull_(strap_pull(job, plan)), width_(plan.panel.blank_width()) {
    const Moulds moulds = plan.load == Load::belt ? Moulds::lower : Moulds::both;
    SpreadingSpec slats = slat_bed(job, plan.panel, moulds);
    for (const Section& section : plan.sections) slats.supports.push_back(section.z);
    clamps_.assign(plan.flats.size(), {});
    for (std::size_t f = 0; f < plan.flats.size(); ++f) {
      SpreadingSpec spec = slats;
      for (const double z : plan.flats[f].planes) spec.loads.push_back({z, plan.flats[f].width, 1});
      if (plan.spacing.clear < kAtLeast) as_block(spec, Moulds::lower, 0);
      if (plan.load == Load::belt) clamps_[f] = lamwright::spread(spec);
    }
    slats.loads = strap_loads(job, plan, moulds);
    if (plan.spacing.clear < kAtLeast) as_block(slats, moulds, double(plan.closures.size()));
    straps_ = lamwright::spread(slats);
  }

  const Spreading& straps() const { return straps_; }

  Pressed at(std::size_t run, double station) const {
    switch (plan_.load) {
      case Load::seated:
        return {plan_.seated->seating.pressure(station), &straps_};
      case Load::even:
        return {plan_.crown->pressure, &straps_};
      case Load::belt:
        break;
    }
    for (std::size_t f = 0; f < plan_.flats.size(); ++f) {
      const FlatPressed& flat = plan_.flats[f];
      if (std::abs(plan_.neutral.station(run) - flat.from) < kSamePoint)
        return {flat.load() * double(flat.planes.size()) / width_, &clamps_[f], true};
    }
    return under_straps(run, station);
  }

 private:
  Pressed under_straps(std::size_t run, double station) const {
    const Run& here = plan_.neutral.runs()[run];
    if (!pull_ || here.curvature <= 0) return {};
    if (station < pull_->from - kSamePoint || station > pull_->to + kSamePoint) return {};
    const double on = on_strap(plan_, *pull_, station);
    if (!pull_->line.touches(on)) return {};
    const double over = plan_.panel.thickness - plan_.panel.neutral_height;
    const double curvature = here.curvature / (1 + here.curvature * over);
    return {pull_->tension(on) * curvature * double(plan_.closures.size()) / width_, &straps_};
  }

  const PressPlan& plan_;
  std::optional<StrapPull> pull_;
  double width_;
  Spreading straps_;
  std::vector<Spreading> clamps_;  // of each flat
};

// Where the map is told along the width: edges, trim lines, formers, and between formers.
std::vector<double> width_stations(const PressPlan& plan) {
  constexpr int kBetween = 4;
  const double width = plan.panel.blank_width(), trim = plan.panel.trim;
  std::vector<double> marks{0, trim, width - trim, width}, out;
  for (const Section& section : plan.sections) marks.push_back(section.z);
  std::sort(marks.begin(), marks.end());
  for (const double z : marks) {
    if (!out.empty() && z - out.back() < kAtLeast) continue;
    if (!out.empty() && z - out.back() > plan.spacing.pitch / 2) {
      const double from = out.back();
      for (int i = 1; i < kBetween; ++i) out.push_back(from + (z - from) * i / kBetween);
    }
    out.push_back(z);
  }
  return out;
}

// Where the pull of one ratchet meets that of the other: the strap is slackest there. Station in run i of the
// neutral line, if it lies in it.
std::optional<double> slackest(const PressPlan& plan, const StrapPull& pull, std::size_t i) {
  const Run& run = plan.neutral.runs()[i];
  if (run.curvature <= 0 || pull.left <= 0 || pull.right <= 0 || pull.friction <= 0) return std::nullopt;
  const double turned = pull.line.from_left(0, pull.exit_left) + pull.line.from_right(0, pull.exit_right);
  const double from_left = (turned + std::log(pull.left / pull.right) / pull.friction) / 2;
  const double heading = pull.line.curve().start().heading + pull.exit_left - from_left;
  const double s = plan.neutral.station(i) + (plan.neutral.pose(i).heading - heading) / run.curvature;
  if (s <= plan.neutral.station(i) || s >= plan.neutral.station(i + 1)) return std::nullopt;
  return s;
}

// Where pressures along run i have their extremes, or end.
std::vector<double> turning_points(const PressPlan& plan, std::size_t i,
                                   const std::optional<StrapPull>& pull) {
  std::vector<double> out{plan.panel.trim, plan.neutral.girth() - plan.panel.trim};
  if (plan.load == Load::seated) {
    const Seating& seating = plan.seated->seating;
    out.insert(out.end(), {seating.least_at(), seating.greatest_at()});
    for (const Stretch& s : seating.lifted()) out.insert(out.end(), {s.from, s.to});
  }
  if (plan.load != Load::belt || !pull) return out;
  for (const double s : {pull->from, pull->to})
    out.insert(out.end(), {s - 2 * kSamePoint, s, s + 2 * kSamePoint});
  if (const auto s = slackest(plan, *pull, i)) out.push_back(*s);
  return out;
}

// Stations of run i on the neutral line, both its ends included; where the pressure ends inside a run, twice.
std::vector<double> girth_stations(const PressPlan& plan, std::size_t i,
                                   const std::optional<StrapPull>& pull) {
  const Run& run = plan.neutral.runs()[i];
  const int pieces = std::max(
      2, int(std::ceil(run.straight() ? run.length / kFlatStep : std::abs(run.turn()) / kGirthStep)));
  std::vector<double> out;
  for (int k = 0; k <= pieces; ++k) out.push_back(plan.neutral.station(i) + run.length * k / pieces);
  const double from = out.front(), to = out.back();
  for (const double s : turning_points(plan, i, pull))
    if (s > from + kSamePoint && s < to - kSamePoint) out.push_back(s);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end(), [](double a, double b) { return b - a < kSamePoint / 2; }),
            out.end());
  return out;
}

void take(PressureMap& map, const Pressed& pressed, double outer, bool sound, double trim, double width) {
  std::vector<double> row;
  for (const double z : map.width) {
    const double value = pressed.spread && pressed.spread->mean > 0
                             ? pressed.mean * pressed.spread->at(z) / pressed.spread->mean
                             : 0;
    row.push_back(value);
    map.greatest = std::max(map.greatest, value);
    map.least = std::min(map.least, value);
    if (!sound || z < trim - kAtLeast || z > width - trim + kAtLeast) continue;
    double& of_kind = pressed.clamped ? map.clamped_least : map.strapped_least;
    of_kind = std::min(of_kind, value);
    if (value > map.sound_greatest) {
      map.sound_greatest = value;
      map.greatest_girth = outer;
      map.greatest_width = z;
    }
    if (value >= map.sound_least) continue;
    map.sound_least = value;
    map.least_girth = outer;
    map.least_width = z;
  }
  map.girth.push_back(outer);
  map.along.push_back(pressed.mean);
  map.value.push_back(std::move(row));
}

double mean_along(const PressureMap& map) {
  double sum = 0;
  for (std::size_t i = 1; i < map.girth.size(); ++i)
    sum += (map.girth[i] - map.girth[i - 1]) * (map.along[i] + map.along[i - 1]) / 2;
  return sum / (map.girth.back() - map.girth.front());
}

}  // namespace

double hardest_inside(const PressPlan& plan, const PressureMap& map, double depth) {
  const double over = plan.panel.thickness - plan.panel.neutral_height;
  double most = 0;
  for (std::size_t i = 0; i < map.along.size(); ++i) {
    const double k = plan.neutral.runs()[map.run[i]].curvature;
    if (plan.load == Load::belt && k == 0) continue;
    most = std::max(most, map.along[i] * (1 + k * over) / (1 + k * (over - depth)));
  }
  return most;
}

double hardest_strapped(const PressPlan& plan, const PressureMap& map) {
  return hardest_inside(plan, map, 0);
}

std::optional<PressureMap> pressure_map(const Job& job, const PressPlan& plan) {
  if (plan.closures.size() < 2) return std::nullopt;
  if (plan.load == Load::seated && (!plan.seated || plan.seated->seating.hold() != Hold::held))
    return std::nullopt;
  const Pressing pressing(job, plan);
  const auto pull = strap_pull(job, plan);
  const Panel& panel = plan.panel;
  PressureMap map;
  map.width = width_stations(plan);
  map.least = map.sound_least = INFINITY;
  const double over = panel.thickness - panel.neutral_height, girth = plan.neutral.girth();
  for (std::size_t i = 0; i < plan.neutral.runs().size(); ++i)
    for (const double s : girth_stations(plan, i, pull)) {
      // The end of a run that lies in the trim is no part of the panel, though it stands on the trim line.
      const bool sound = s >= panel.trim - kAtLeast && s <= girth - panel.trim + kAtLeast &&
                         plan.neutral.station(i + 1) > panel.trim + kAtLeast &&
                         plan.neutral.station(i) < girth - panel.trim - kAtLeast;
      take(map, pressing.at(i, s), offset_station(plan.neutral, s, over), sound, panel.trim,
           panel.blank_width());
      map.run.push_back(i);
    }
  map.mean = mean_along(map);
  map.straps = pressing.straps();
  return map;
}

}  // namespace lamwright
