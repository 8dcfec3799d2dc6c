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

std::vector<double> screw_stations(const Job& job, double from, double to, double first) {
  std::vector<double> screws{first};
  for (double x = first + job.beams.screw_pitch; x <= to - kScrewFromEnd + kAtLeast;
       x += job.beams.screw_pitch)
    screws.push_back(x);
  for (double x = first - job.beams.screw_pitch; x >= from + kScrewFromEnd - kAtLeast;
       x -= job.beams.screw_pitch)
    screws.push_back(x);
  std::sort(screws.begin(), screws.end());
  return screws;
}

std::vector<double> hole_row(const StrapSpec& straps, double middle) {
  std::vector<double> row;
  for (int i = 0; i < straps.holes; ++i)
    row.push_back(middle + (i - (straps.holes - 1) / 2.0) * straps.hole_pitch);
  return row;
}

// Height of the strap holes above the beam's underside.
double hole_height(const BeamSpec& beams) { return beams.depth - strap_drop(beams); }

double counterbore_depth(const BeamSpec& beams) {
  return beams.depth + beams.screw_reach - beams.screw_length;
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

// Moves each screw but the centre one off the obstacles by the least that clears, inward first.
// X of a side at a height.
double side_at(const std::vector<Vec2>& edge, double y) {
  for (std::size_t i = 0; i + 1 < edge.size(); ++i) {
    const Vec2 &a = edge[i], &b = edge[i + 1];
    if (y <= a.y() && y >= b.y() && a.y() - b.y() > kSamePoint)
      return a.x() + (b.x() - a.x()) * (a.y() - y) / (a.y() - b.y());
  }
  return y > edge.front().y() ? edge.front().x() : edge.back().x();
}

struct ScrewRoom {
  double from, to;  // where a screw may stand
  double apart;     // from strap holes
  std::vector<double> holes;
  std::vector<Circle> obstacles;
  double pilot;    // radius
  double centre;   // station of the centre screw, which never moves
  double between;  // least distance between two screws
  const PressFrame* frame;
  double reach;

  // The pilot stands in wood all the way up, where sides may lean in.
  bool inside_sides(double x) const {
    const double room = pilot + kLeastWood;
    for (const double y : {0.0, reach / 2, reach})
      if (x < side_at(frame->left.edge, y) || x > side_at(frame->right.edge, y)) return false;
    for (const auto* edge : {&frame->left.edge, &frame->right.edge})
      for (std::size_t i = 0; i + 1 < edge->size(); ++i)
        for (const double y : {reach / 2, reach})
          if (distance(line((*edge)[i], (*edge)[i + 1]), Vec2(x, y)) < room - kAtLeast) return false;
    return true;
  }

  bool free(double x) const {
    if (!inside_sides(x)) return false;
    for (const double hole : holes)
      if (std::abs(hole - x) < apart - kAtLeast) return false;
    for (const Circle& c : obstacles) {
      const Vec2 nearest{x, std::clamp(c.centre.y(), 0.0, reach)};
      if ((nearest - c.centre).norm() < c.radius + pilot + kLeastWood - kAtLeast) return false;
    }
    return true;
  }
};

// Foot screws count from X = 0 outward; where the foot has no room for one there (a very unequal L), from the
// middle of the wood that reaches up between the sides.
double first_screw(const PressFrame& frame, double from, double to, double reach, double pilot) {
  const double room = pilot + kLeastWood;
  const double low = std::max(from + kScrewFromEnd,
                              std::max(side_at(frame.left.edge, 0), side_at(frame.left.edge, reach)) + room);
  const double high = std::min(
      to - kScrewFromEnd, std::min(side_at(frame.right.edge, 0), side_at(frame.right.edge, reach)) - room);
  return low <= kAtLeast && high >= -kAtLeast ? 0 : (low + high) / 2;
}

std::vector<double> screws_moved(const std::vector<double>& screws, const ScrewRoom& room) {
  std::vector<double> out;
  for (const double screw : screws) {
    if (screw == room.centre || room.free(screw)) {
      out.push_back(screw);
      continue;
    }
    for (double step = 1; step < 150; ++step) {
      const double sense = screw > room.centre ? step : -step;
      const double inward = screw - sense, outward = screw + sense;
      const auto stands = [&](double x) {
        return x >= room.from - kAtLeast && x <= room.to + kAtLeast &&
               std::abs(x - room.centre) >= room.between && room.free(x) &&
               std::none_of(out.begin(), out.end(), [&](double o) { return std::abs(o - x) < room.between; });
      };
      if (stands(inward) || stands(outward)) {
        out.push_back(stands(inward) ? inward : outward);
        break;
      }
    }
  }
  return out;
}

[[noreturn]] void refuse_row(const End& end, const Row& row) {
  throw geometry_error(std::string(end.side < 0 ? "left" : "right") + " strap holes",
                       "clear of the foot screws the strap would leave at " +
                           number(degrees(row.strap.exit), 1) + " degrees; allowed 20 to 30",
                       "change beams.screw.pitch or straps.exit");
}

Row settle_row(const Job& job, const End& end, std::vector<double>& screws, ScrewRoom room) {
  const double shift = clearing_shift(job, end, screws);
  const Row moved = hooked(job, end, std::isfinite(shift) ? shift : 0);
  if (std::isfinite(shift) && (shift == 0 || hooks_well(job, end, moved.strap))) return moved;
  const Row still = hooked(job, end, 0);
  room.holes = still.holes;
  screws = screws_moved(screws, room);
  if (!row_clears(still.holes, screws, room.apart)) refuse_row(end, moved);
  return still;
}

BoreSpec foot_screw(const BeamSpec& beams, double x) {
  BoreSpec bore{BoreUse::foot_screw, beams.screw_diameter + 1, std::nullopt,
                std::nullopt,        {x, 0, beams.width / 2},  {0, 1, 0}};
  if (counterbore_depth(beams) > 0)
    bore.counterbore = Counterbore{beams.counterbore, counterbore_depth(beams)};
  return bore;
}

std::string stock_of(const BeamSpec& beams) {
  return beams.timber_class + " " + number(beams.width) + " x " + number(beams.depth);
}

Part bored_beam(const Job& job, PartKind kind, double from, double to, const BeamLayout& layout) {
  PartSpec spec{to_text(kind),
                kind,
                stock_of(job.beams),
                rectangle({from, 0}, {to, job.beams.depth}),
                job.beams.width,
                {},
                {},
                {},
                false};
  for (const double x : layout.screws) spec.bores.push_back(foot_screw(job.beams, x));
  if (kind == PartKind::beam)
    for (const auto* row : {&layout.left_holes, &layout.right_holes})
      for (const double x : *row)
        spec.bores.push_back({BoreUse::strap,
                              job.straps.hole,
                              std::nullopt,
                              std::nullopt,
                              {x, hole_height(job.beams), 0},
                              {0, 0, 1}});
  return make_part(std::move(spec));
}

// The groove runs the whole length: the cross-section is the outline, in the plane across the beam.
Part grooved_bearer(const Job& job, double from, double to) {
  const BeamSpec& beams = job.beams;
  const double cheek = (beams.width - job.formers.thickness) / 2,
               floor = beams.depth - *job.formers.groove_depth;
  if (cheek < kLeastWood - kAtLeast || floor < kLeastWood - kAtLeast)
    throw geometry_error("grooved bearer",
                         "a groove " + number(job.formers.thickness) + " wide and " +
                             number(*job.formers.groove_depth) + " deep leaves less than 5 of a bearer " +
                             number(beams.width) + " x " + number(beams.depth),
                         "use wider beams or a shallower groove");
  const double w = beams.width, d = beams.depth;
  const std::vector<Vec2> corners{{0, 0},         {w, 0},     {w, d}, {w - cheek, d}, {w - cheek, floor},
                                  {cheek, floor}, {cheek, d}, {0, d}};
  const Frame sheet{{to, 0, 0}, {0, 0, 1}, {0, 1, 0}};
  return make_part({to_text(PartKind::bearer),
                    PartKind::bearer,
                    stock_of(beams),
                    polygon(corners, "grooved bearer"),
                    to - from,
                    sheet,
                    {},
                    {},
                    false});
}

}  // namespace

BeamLayout beam_layout(const Job& job, const PressFrame& frame, bool strapped,
                       const std::vector<Circle>& obstacles) {
  double from = frame.foot_left(), to = frame.foot_right();
  if (strapped && frame.rollers) {  // the beam ends inside the foot
    const double past = (job.straps.holes - 1) / 2.0 * job.straps.hole_pitch + kBeamPastHole;
    from = std::max(from, frame.left.strap.mark.x() - past);
    to = std::min(to, frame.right.strap.mark.x() + past);
  }
  const double pilot = 0.35 * job.beams.screw_diameter;
  const double first = first_screw(frame, from, to, job.beams.screw_reach, pilot);
  ScrewRoom room{from + kScrewFromEnd,
                 to - kScrewFromEnd,
                 strapped ? least_apart(job) : 0,
                 {},
                 obstacles,
                 pilot,
                 first,
                 std::max(job.beams.counterbore, job.beams.screw_diameter + 1) + kLeastWood,
                 &frame,
                 job.beams.screw_reach};
  BeamLayout layout;
  layout.screws = screws_moved(screw_stations(job, from, to, first), room);
  layout.from = frame.foot_left();
  layout.to = frame.foot_right();
  if (!strapped) return layout;
  const Row left = settle_row(job, frame.left, layout.screws, room);
  const Row right = settle_row(job, frame.right, layout.screws, room);
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

Part beam_part(const Job& job, const BeamLayout& layout) {
  return bored_beam(job, PartKind::beam, layout.from, layout.to, layout);
}

Part bearer_part(const Job& job, const PressFrame& frame, const BeamLayout& layout) {
  if (job.formers.groove_depth) return grooved_bearer(job, frame.foot_left(), frame.foot_right());
  return bored_beam(job, PartKind::bearer, frame.foot_left(), frame.foot_right(), layout);
}

}  // namespace lamwright::one_part
