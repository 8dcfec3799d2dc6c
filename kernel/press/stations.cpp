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

int former_count(const StationSpec& spec) {
  const double length = spec.pack_width - spec.widest;
  switch (spec.spacing.kind) {
    case SpacingSpec::Kind::automatic:
      return least_count(length, kAutomaticPitch);
    case SpacingSpec::Kind::pitch:
      return least_count(length, spec.spacing.length);
    case SpacingSpec::Kind::max_clear:
      return least_count(length, spec.spacing.length + spec.board);
    case SpacingSpec::Kind::count:
      return spec.spacing.count;
  }
  return 2;
}

std::vector<bool> strapped_every(int count, int every) {
  std::vector<bool> strapped(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) strapped[std::size_t(i)] = i % every == 0 || i == count - 1;
  return strapped;
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

}  // namespace

Stations stations(const StationSpec& spec) {
  const double length = spec.pack_width - spec.widest;
  if (length <= 0)
    throw geometry_error("formers",
                         "the pack is " + number(spec.pack_width) + " wide and its edge formers take " +
                             number(2 * spec.widest),
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
    note = "Former spacing: at most " + number(kAutomaticPitch) +
           " apart, common practice; not yet worked out from the cauls' stiffness.";
  Stations out{{pitch, pitch - spec.board, spec.widest, every, note}, {}, strapped_every(count, every)};
  for (int i = 0; i < count; ++i) out.mid_planes.push_back(spec.widest / 2 + i * pitch);
  return out;
}

}  // namespace lamwright
