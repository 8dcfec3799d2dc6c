#include "kernel/press/one_part/beam.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::one_part {
namespace {

constexpr double kLeastExit = 20, kMostExit = 30;  // degrees

std::vector<double> hole_row(const StrapSpec& straps, double middle) {
  std::vector<double> row;
  for (int i = 0; i < straps.holes; ++i)
    row.push_back(middle + (i - (straps.holes - 1) / 2.0) * straps.hole_pitch);
  return row;
}

// Least distance along X between a strap hole and a foot screw, with 5 of wood between: the screw's
// counterbore reaches past the strap holes' height or it does not.
double least_apart(const Job& job) {
  const double hole = job.straps.hole / 2;
  const double up = hole_height(job.beams) - counterbore_depth(job.beams);
  const double bore = hole + (job.beams.screw_diameter + 1) / 2 + kLeastWood;
  if (counterbore_depth(job.beams) <= 0 || up >= hole + kLeastWood) return bore;
  const double wide = hole + kLeastWood;
  const double past = up > 0 ? std::sqrt(wide * wide - up * up) : wide;
  return std::max(bore, job.beams.counterbore / 2 + past);
}

bool row_clears(const std::vector<double>& row, const std::vector<double>& screws, double apart) {
  for (const double hole : row)
    for (const double screw : screws)
      if (std::abs(hole - screw) < apart - kAtLeast) return false;
  return true;
}

// The strap hooked to another hole of the row: its run and the angle at which it leaves change.
StrapEnd rehooked(const End& end, const Vec2& mark) {
  StrapEnd strap = end.strap;
  strap.mark = mark;
  if (strap.roller) {
    strap.run = (mark - strap.roller->off).norm();
    return strap;
  }
  strap.run = (mark - strap.leaves).norm();
  const Vec2 d = mark - strap.leaves;
  const double heading = std::atan2(d.y(), d.x());
  strap.exit =
      std::remainder(end.side > 0 ? end.caul.heading - heading : heading - end.caul.heading - kPi, 2 * kPi);
  return strap;
}

bool exit_allowed(const StrapEnd& strap) {
  const double exit = degrees(strap.exit);
  return strap.roller || (exit >= kLeastExit - kAtLeast && exit <= kMostExit + kAtLeast);
}

// The strap as hooked keeps its angle, its ratchet's run and its distance from the former's side.
bool hooks_well(const Job& job, const End& end, const StrapEnd& strap) {
  const double free = job.straps.ratchet + kRatchetSpare;
  if (!exit_allowed(strap) || strap.run < free - kAtLeast) return false;
  if (strap.roller) return true;
  End hooked = end;
  hooked.strap = strap;
  hooked.down = (strap.mark - strap.leaves).normalized();
  return side_clears(end.edge, hooked, free);
}

struct Row {
  std::vector<double> holes;
  StrapEnd strap;
};

// A row gives way outward; beyond a guide roller inward, where the strap gets longer.
int way(const End& end) { return end.strap.roller ? -end.side : end.side; }

// The hole nearest the mark, among those that keep the ratchet's run if there are any.
Row hooked(const Job& job, const End& end, double shift) {
  Row row{hole_row(job.straps, end.strap.mark.x() + way(end) * shift), end.strap};
  if (shift == 0) return row;
  const double mark = end.strap.mark.x();
  std::vector<double> holes = row.holes;
  std::stable_sort(holes.begin(), holes.end(),
                   [&](double a, double b) { return std::abs(a - mark) < std::abs(b - mark) - kSamePoint; });
  const auto hook = [&](double x) { return rehooked(end, {x, end.strap.mark.y()}); };
  const auto keeps = [&](double x) { return hooks_well(job, end, hook(x)); };
  const auto best = std::find_if(holes.begin(), holes.end(), keeps);
  row.strap = hook(best == holes.end() ? holes.front() : *best);
  return row;
}

// Least outward shift that clears: it is 0 or makes one hole stand just clear of one screw.
double clearing_shift(const Job& job, const End& end, const std::vector<double>& screws) {
  const double apart = least_apart(job);
  const std::vector<double> row = hole_row(job.straps, end.strap.mark.x());
  std::vector<double> candidates{0};
  for (const double hole : row)
    for (const double screw : screws) candidates.push_back((screw - hole) * way(end) + apart);
  std::sort(candidates.begin(), candidates.end());
  for (const double shift : candidates)
    if (shift >= 0 && row_clears(hooked(job, end, shift).holes, screws, apart)) return shift;
  return INFINITY;
}

[[noreturn]] void refuse_row(const End& end, const Row& row) {
  throw geometry_error(std::string(end.side < 0 ? "left" : "right") + " strap holes",
                       "clear of the foot screws the strap would leave at " +
                           number(degrees(row.strap.exit), 1) + " degrees; allowed 20 to 30",
                       "change beams.screw.pitch or straps.exit");
}

Row settle_row(const Job& job, const End& end, std::vector<double>& screws, const FootScrews& foot) {
  const double shift = clearing_shift(job, end, screws), apart = least_apart(job);
  const Row moved = hooked(job, end, std::isfinite(shift) ? shift : 0);
  if (std::isfinite(shift) && (shift == 0 || hooks_well(job, end, moved.strap))) return moved;
  const Row still = hooked(job, end, 0);
  screws = foot.moved(screws, still.holes, apart);
  if (!row_clears(still.holes, screws, apart)) refuse_row(end, moved);
  return still;
}

}  // namespace

BeamLayout beam_layout(const Job& job, const PressFrame& frame, const Mould& mould, bool strapped,
                       const std::vector<Obstacle>& obstacles) {
  double from = mould.foot_left(), to = mould.foot_right();
  if (strapped && frame.rollers) {  // the beam ends inside the foot
    const double past = (job.straps.holes - 1) / 2.0 * job.straps.hole_pitch + kBeamPastHole;
    from = std::max(from, frame.left.strap.mark.x() - past);
    to = std::min(to, frame.right.strap.mark.x() + past);
  }
  const FootScrews foot({job, mould, from, to, obstacles, {}});
  BeamLayout layout;
  layout.screws = foot.laid();
  layout.from = mould.foot_left();
  layout.to = mould.foot_right();
  if (!strapped) return layout;
  const Row left = settle_row(job, frame.left, layout.screws, foot);
  const Row right = settle_row(job, frame.right, layout.screws, foot);
  layout.left_holes = left.holes;
  layout.right_holes = right.holes;
  layout.left = left.strap;
  layout.right = right.strap;
  layout.from = left.holes.front() - kBeamPastHole;
  layout.to = right.holes.back() + kBeamPastHole;
  if (right.holes.front() - left.holes.back() < job.straps.hole + kLeastWood - kAtLeast)
    throw geometry_error(
        "strap holes", "the rows of both ends would meet in the beam",
        frame.rollers ? "set press.guide_rollers = false" : "use fewer strap holes (straps.holes)");
  // Rows beyond guide rollers lie inside the foot: screws past the beam's ends are left out.
  std::erase_if(layout.screws, [&](double x) {
    return x < layout.from + kScrewFromEnd - kAtLeast || x > layout.to - kScrewFromEnd + kAtLeast;
  });
  return layout;
}

TimberSpec BeamLayout::timber() const {
  TimberSpec spec{from, to, screws, left_holes};
  spec.strap_holes.insert(spec.strap_holes.end(), right_holes.begin(), right_holes.end());
  return spec;
}

}  // namespace lamwright::one_part
