#include "kernel/press/stations.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr double kStrapClear = 5;  // between neighbouring straps or beams
constexpr int kMostFormers = 2000;

int least_count(double length, double greatest_pitch) {
  const double count = std::ceil(length / greatest_pitch - kWholeNumber) + 1;
  return int(std::clamp(count, 2.0, 1e6));
}

std::vector<bool> strapped_every(int count, int every) {
  std::vector<bool> strapped(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) strapped[std::size_t(i)] = i % every == 0 || i == count - 1;
  return strapped;
}

std::vector<double> planes_of(const StationSpec& spec, int count) {
  std::vector<double> planes;
  const double pitch = (spec.pack_width - spec.widest) / (count - 1);
  for (int i = 0; i < count; ++i) planes.push_back(spec.widest / 2 + i * pitch);
  return planes;
}

bool even_enough(const StationSpec& spec, int count) {
  const Spreading found = spreading(*spec.load, planes_of(spec, count), strapped_every(count, spec.every));
  if (!spec.strapped) return found.greatest_sag <= spec.spacing.sag;
  return found.even() >= spec.spacing.even && found.greatest_sag <= spec.spacing.sag;
}

// The fewest formers with which the slats press evenly enough. With a strap on each, more formers never press
// less evenly, so the number is found by halving; with straps on every n-th the last gap goes up and down.
int automatic_count(const StationSpec& spec, double length) {
  const int fewest = least_count(length, kAutomaticPitch);
  if (!spec.load) return fewest;
  const double closest =
      spec.strapped ? std::max({spec.widest + kStrapClear, spec.board, spec.beam}) : spec.board;
  const int most = int(std::floor(length / closest + kWholeNumber)) + 1;
  if (most <= fewest || even_enough(spec, fewest)) return fewest;
  if (spec.every > 1) {
    int count = fewest + 1;
    while (count < most && !even_enough(spec, count)) ++count;
    return count;
  }
  int low = fewest, high = most;
  while (high - low > 1) {
    const int middle = (low + high) / 2;
    (even_enough(spec, middle) ? high : low) = middle;
  }
  return high;
}

int former_count(const StationSpec& spec) {
  const double length = spec.pack_width - spec.widest;
  switch (spec.spacing.kind) {
    case SpacingSpec::Kind::automatic:
      return automatic_count(spec, length);
    case SpacingSpec::Kind::pitch:
      return least_count(length, spec.spacing.length);
    case SpacingSpec::Kind::max_clear:
      return least_count(length, spec.spacing.length + spec.board);
    case SpacingSpec::Kind::count:
      return spec.spacing.count;
  }
  return 2;
}

// Why automatic spacing came out as it did.
std::string automatic_note(const StationSpec& spec, int count, double pitch) {
  const std::string text = counted(count, "former") + " " + number(pitch, 1) + " apart: ";
  if (!spec.load) return text + "no more than " + number(kAutomaticPitch) + ", common practice.";
  if (!spec.strapped)
    return text + "the widest spacing that keeps the sag between them at " + number(spec.spacing.sag) +
           " or less under what the glue wants, and is not wider than " + number(kAutomaticPitch) + ".";
  if (!even_enough(spec, count))
    return text + "as close as straps and beams " + number(spec.widest) +
           " wide allow; the slats spread the pull too little all the same.";
  return text + "the widest spacing that keeps least over mean pressure along the width at " +
         number(spec.spacing.even) + " or better, the slats' sag at " + number(spec.spacing.sag) +
         " or less, and is not wider than " + number(kAutomaticPitch) + ".";
}

// Least number of formers between two straps, the stretch before the last included.
int least_gap(int count, int every) {
  const int rest = (count - 1) % every;
  return count - 1 < every ? count - 1 : rest == 0 ? every : std::min(every, rest);
}

int fitting(double length, double least_pitch) {
  return int(std::floor(length / least_pitch + kWholeNumber)) + 1;
}

int raised_every(int count, double pitch, double least) {
  for (int every = 1; every < count; ++every)
    if (least_gap(count, every) * pitch >= least - kAtLeast) return every;
  return 0;
}

// Every former between straps stands on a bearer of the beam's width, and straps pass beside those.
void refuse_crowded(const StationSpec& spec, int count, double pitch, double length) {
  const double least = std::max({spec.board, spec.beam, (spec.strap + spec.beam) / 2});
  if (pitch >= least - kAtLeast) return;
  throw geometry_error("formers.spacing",
                       std::to_string(count) + " formers would stand " + number(pitch) +
                           " apart; their beams and bearers are " + number(spec.beam) +
                           " wide and straps pass beside them, which needs " + number(least),
                       "at most " + std::to_string(fitting(length, least)) + " fit");
}

// Without straps, bearers go under the first former and every one that leaves room for another, and under the
// last.
std::vector<bool> borne_of(const StationSpec& spec, const std::vector<double>& planes) {
  std::vector<bool> borne(planes.size(), spec.strapped);
  if (spec.strapped) return borne;
  borne.front() = borne.back() = true;
  double last = planes.front();
  for (std::size_t i = 1; i + 1 < planes.size(); ++i) {
    borne[i] = planes[i] - last >= spec.beam - kAtLeast && planes.back() - planes[i] >= spec.beam - kAtLeast;
    if (borne[i]) last = planes[i];
  }
  return borne;
}

// Boards of a stack on which straps and beams stand: flush with the pack's edges and as far apart as formers
// of their own would be.
std::vector<bool> strapped_in_stack(const StationSpec& spec, const std::vector<double>& planes) {
  std::vector<bool> strapped(planes.size(), false);
  const double inset = spec.widest / 2, length = spec.pack_width - spec.widest;
  const int count = spec.every_given ? int(std::ceil(double(planes.size()) / spec.every)) : 0;
  const int straps = std::max(2, count > 0 ? count : least_count(length, kAutomaticPitch));
  for (int i = 0; i < straps; ++i) {
    const double wish = inset + i * length / (straps - 1);
    const auto nearer = [&](double a, double b) {
      return std::abs(a - wish) < std::abs(b - wish) - kSamePoint;
    };
    // Within the pack at both edges.
    std::vector<double> inside;
    for (const double z : planes)
      if (z >= inset - kAtLeast && z <= spec.pack_width - inset + kAtLeast) inside.push_back(z);
    if (inside.empty()) continue;
    const double z = *std::min_element(inside.begin(), inside.end(), nearer);
    strapped[std::size_t(std::find(planes.begin(), planes.end(), z) - planes.begin())] = true;
  }
  return strapped;
}

Stations stacked(const StationSpec& spec) {
  const int count = std::max(2, int(std::ceil(spec.pack_width / spec.board - kWholeNumber)));
  if (count > kMostFormers)
    throw geometry_error("formers.spacing", "makes " + std::to_string(count) + " formers",
                         "allowed 2 to 2000; use thicker boards");
  Stations out{{spec.board, 0, spec.board, 1, ""}, {}, {}, {}};
  const double first = (spec.pack_width - (count - 1) * spec.board) / 2;
  for (int i = 0; i < count; ++i) out.mid_planes.push_back(first + i * spec.board);
  if (!spec.strapped) {
    out.strapped.assign(std::size_t(count), false);
    out.borne = borne_of(spec, out.mid_planes);
    return out;
  }
  out.strapped = out.borne = strapped_in_stack(spec, out.mid_planes);
  double before = -INFINITY;
  for (std::size_t i = 0; i < out.mid_planes.size(); ++i) {
    if (!out.strapped[i]) continue;
    if (out.mid_planes[i] - before < spec.widest + kStrapClear - kAtLeast)
      throw geometry_error("formers",
                           "in a stack " + number(spec.pack_width) + " wide, straps and beams up to " +
                               number(spec.widest) + " wide would stand " +
                               number(out.mid_planes[i] - before) + " apart",
                           "they need " + number(spec.widest + kStrapClear) +
                               "; use narrower ones, or fewer with beams.every");
    before = out.mid_planes[i];
  }
  out.spacing.note = "Boards are stacked without gaps; straps and beams stand on " +
                     std::to_string(std::count(out.strapped.begin(), out.strapped.end(), true)) + " of " +
                     std::to_string(count) + ".";
  return out;
}

}  // namespace

Spreading spreading(const SlatLoad& load, const std::vector<double>& planes,
                    const std::vector<bool>& strapped) {
  SpreadingSpec spec = load.slats;
  spec.supports = planes;
  spec.even = load.even;
  if (load.even <= 0) spec.loads = loads(planes, strapped, load.moulds, load.width, load.force);
  return spread(spec);
}

StationSpec station_spec(const Job& job, const Panel& panel, bool strapped, Moulds moulds) {
  const double board = job.formers.thickness;
  const SpacingSpec& spacing = job.formers.spacing;
  return {
      .pack_width = panel.blank_width(),
      .board = board,
      .widest = strapped ? std::max({board, job.beams.width, job.straps.width}) : board,
      .beam = job.beams.width,
      .strap = job.straps.width,
      .strapped = strapped,
      .spacing = spacing,
      .every = job.beams.every,
      .every_given = job.beams.every_given,
      .stack = job.caul.kind != CaulSpec::Kind::slatted && spacing.kind == SpacingSpec::Kind::pitch &&
               std::abs(spacing.length - board) < kAtLeast,
      .load = SlatLoad{slat_bed(job, panel, moulds), moulds, load_width(job, moulds),
                       greatest_load(job, panel, moulds), strapped ? 0 : job.layup.glue_row.pressure_low}};
}

Stations stations(const StationSpec& spec) {
  if (spec.stack) return stacked(spec);
  const double length = spec.pack_width - spec.widest;
  if (length <= 0 || (spec.strapped && length < spec.widest + kStrapClear - kAtLeast))
    throw geometry_error("formers",
                         "the pack is " + number(spec.pack_width) +
                             " wide; two formers with beams and straps up to " + number(spec.widest) +
                             " wide need " + number(2 * spec.widest + (spec.strapped ? kStrapClear : 0)),
                         "make the panel wider, or beams and straps narrower");
  const int count = former_count(spec);
  if (count > kMostFormers)
    throw geometry_error("formers.spacing", "makes " + std::to_string(count) + " formers",
                         "allowed 2 to 2000; space them wider");
  const double pitch = length / (count - 1);
  if (pitch < spec.board - kAtLeast)
    throw geometry_error("formers.spacing",
                         std::to_string(count) + " formers would stand " + number(pitch) + " apart and are " +
                             number(spec.board) + " thick",
                         "at most " + std::to_string(fitting(length, spec.board)) + " fit");
  if (spec.strapped) refuse_crowded(spec, count, pitch, length);
  const double least = spec.widest + kStrapClear;
  int every = spec.every;
  std::string note;
  if (spec.strapped && least_gap(count, every) * pitch < least - kAtLeast) {
    const int raised = spec.every_given ? 0 : raised_every(count, pitch, least);
    if (raised == 0)
      throw geometry_error("formers.spacing",
                           "straps and beams up to " + number(spec.widest) + " wide would stand " +
                               number(least_gap(count, every) * pitch) + " apart; they need " + number(least),
                           "with a strap on each, at most " + std::to_string(fitting(length, least)) +
                               " formers fit; or put straps on every n-th with beams.every");
    every = raised;
    note = "Straps and beams on every " + std::to_string(every) + ". former: they are " +
           number(spec.widest) + " wide and formers stand " + number(pitch, 1) + " apart.";
  }
  if (spec.spacing.kind == SpacingSpec::Kind::automatic && note.empty())
    note = automatic_note(spec, count, pitch);
  Stations out{{pitch, pitch - spec.board, spec.widest, every, note}, {}, {}, {}};
  out.strapped = spec.strapped ? strapped_every(count, every) : std::vector<bool>(std::size_t(count), false);
  out.mid_planes = planes_of(spec, count);
  out.borne = borne_of(spec, out.mid_planes);
  return out;
}

}  // namespace lamwright
