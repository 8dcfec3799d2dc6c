#include "kernel/press/one_part/frame.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/mould/timber.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::one_part {
namespace {

std::string side_name(int side) { return side < 0 ? "left" : "right"; }

struct Layout {
  const Job& job;
  const PressCurves& curves;  // chord at Y = 0
  bool strapped;
  bool rollers;
  double free;
};

Profile contact_edge(const Layout& in, double left, double right) {
  return extended(in.curves.contact, left, right);
}

// The strap leaves from the smooth line at the caul's thickness, on the normal at the last slat's outer edge.
End end_of(const Layout& in, int side) {
  End end;
  end.side = side;
  const Pose over = in.curves.over.at(side < 0 ? in.curves.top_from : in.curves.top_to);
  end.caul = {over.point + in.curves.top * over.normal(), over.heading};
  const double exit = in.job.straps.exit;
  end.down = side > 0 ? direction(over.heading - exit) : direction(over.heading + kPi + exit);
  end.extend = in.job.formers.extend;
  constexpr double kMostGrip =
      10;  // degrees past the vertical from which a panel without straps grips its mould
  const double past = degrees(end.side > 0 ? -over.heading : over.heading) - 90;
  if (!in.strapped && past > kMostGrip)
    throw geometry_error(
        side_name(side) + " end of the panel",
        "turns " + number(past, 1) + " degrees past the vertical and grips the mould; at most 10 come off it",
        "make the panel in two pieces, or turn less");
  constexpr double kLeastFall =
      5;  // degrees under the level: nearer to it the strap never comes down to a beam
  const double fall = degrees(std::asin(std::clamp(-end.down.y(), -1.0, 1.0)));
  if (in.strapped && fall < kLeastFall)
    throw geometry_error(side_name(side) + " strap",
                         "would leave the caul " + number(std::abs(fall), 1) + " degrees " +
                             (fall < 0 ? "above" : "under") + " the level; at least 5 under it",
                         "press this shape in a two-part mould");
  return end;
}

double lowest(const Profile& line) { return line.box().low.y(); }

// Height of the base in the frame of the curves.
double base_height(const Layout& in, const End& left, const End& right) {
  double base = lowest(contact_edge(in, left.extend, right.extend)) - in.job.formers.min_depth;
  if (in.strapped && !in.rollers)
    for (const End* end : {&left, &right})
      base = std::min(base, end->caul.point.y() + in.free * end->down.y() + strap_drop(in.job.beams));
  return base;
}

StrapEnd straight_strap(const End& end, double drop) {
  const double run = (end.caul.point.y() + drop) / -end.down.y();
  return {end.caul.point, end.caul.point + run * end.down, run, 0, std::nullopt};
}

// The roller lies at the foot's corner, inside the strap line, and hangs a little below the base; the leg to
// the mark keeps the free run.
StrapEnd roller_strap(const End& end, double drop, double free, double diameter, double thickness) {
  const double r = diameter / 2;
  const double height = r - 2 * thickness;  // of the axis: the strap passes under the foot
  const Vec2 inward = end.side > 0 ? Vec2(end.down.y(), -end.down.x()) : Vec2(-end.down.y(), end.down.x());
  const double along = (end.caul.point.y() + r * inward.y() - height) / -end.down.y();
  const Vec2 on = end.caul.point + along * end.down;
  const Vec2 axis = on + r * inward;
  const double reach = std::sqrt(free * free + r * r);
  const double across = std::sqrt(reach * reach - std::pow(axis.y() + drop, 2));
  const Vec2 mark{axis.x() - end.side * across, -drop};
  // Tangent point on the roller's outer underside: turn the line to the axis by the tangent's angle.
  const Vec2 back = (axis - mark) / reach;
  const double angle = std::atan2(r, free) * (end.side > 0 ? -1 : 1);
  const Vec2 leg{std::cos(angle) * back.x() - std::sin(angle) * back.y(),
                 std::sin(angle) * back.x() + std::cos(angle) * back.y()};
  return {end.caul.point, mark, free, 0, Roller{axis, diameter, on, mark + free * leg}};
}

Vec2 contact_end(const Profile& contact, int side) {
  return side > 0 ? contact.end().point : contact.start().point;
}

// The exit, at least 20 degrees, at which the contact edge's end without extension lies 30 inside the strap.
std::optional<double> fitting_exit(const End& end, const Vec2& bare) {
  for (double exit = degrees(end.strap.exit); exit >= 20; exit -= 0.5) {
    const Vec2 down =
        direction(end.side > 0 ? end.caul.heading - radians(exit) : end.caul.heading + kPi + radians(exit));
    if (inside_strap(bare, end.caul.point, down, end.side) >= kRatchetClear) return exit;
  }
  return std::nullopt;
}

[[noreturn]] void refuse_side(const Layout& in, const End& end, double distance, const Vec2& bare) {
  const auto exit = fitting_exit(end, bare);
  const std::string way_out = exit ? "set straps.exit to " + number(*exit, 1)
                              : in.job.caul.kind == CaulSpec::Kind::slatted
                                  ? "use a thicker caul, or one whose slats reach nearer to the pack's end"
                                  : "set straps.kind = \"none\" and press it without straps";
  throw geometry_error(side_name(end.side) + " side of the former",
                       "the strap line passes " + number(distance, 1) +
                           " from the contact edge's end; 30 are needed beside the ratchet",
                       way_out);
}

// Parallel to the strap from the contact edge's end; that end must lie 30 inside, so the extension may give
// way.
void slope_side(const Layout& in, const Profile& contact, End& end) {
  const double distance = inside_strap(contact_end(contact, end.side), end.caul.point, end.down, end.side);
  if (distance < kRatchetClear - kAtLeast) {
    const Vec2 tangent = end.side > 0 ? contact.end().tangent() : Vec2(-contact.start().tangent());
    const double per_mm = inside_strap(end.caul.point + tangent, end.caul.point, end.down, end.side);
    const double shorter = (kRatchetClear - distance) / -per_mm;
    if (!(per_mm < 0) || shorter > end.extend + kAtLeast)
      refuse_side(in, end, distance + (per_mm < 0 ? -per_mm * end.extend : 0),
                  contact_end(contact, end.side) - end.extend * tangent);
    end.extend = std::max(0.0, end.extend - shorter);
  }
  end.sloped = true;
}

void run_side(const Layout& in, const Profile& contact, End& end) {
  const Vec2 top = contact_end(contact, end.side);
  const std::vector<Vec2> square{top, {top.x(), 0}};
  if (!end.sloped && (!in.strapped || side_clears(square, end, in.free))) {
    end.edge = square;
    return;
  }
  slope_side(in, contact, end);
}

void draw_slope(const Profile& contact, End& end) {
  const Vec2 top = contact_end(contact, end.side);
  end.edge = {top, {top.x() + end.down.x() * top.y() / -end.down.y(), 0}};
}

// Corner of the foot beside a roller, at X: no higher than the roller, and 10 inside the strap.
Vec2 shoulder(const End& end, double x, double top) {
  const auto inside = [&](double y) { return inside_strap({x, y}, end.caul.point, end.down, end.side); };
  if (inside(top) >= kStrapClear) return {x, top};
  return {x, top * (inside(0) - kStrapClear) / (inside(0) - inside(top))};
}

// The foot carries the roller at its corner: it is cut back where the roller would stand in it, and reaches
// out to it where it would fall short.
void meet_roller(End& end) {
  if (!end.strap.roller) return;
  const Roller& roller = *end.strap.roller;
  const double reach = roller.diameter / 2 + kRollerClear;
  const double top = roller.axis.y() + reach, x = roller.axis.x() - end.side * reach;
  if (end.edge.front().y() <= top)
    throw geometry_error("guide rollers",
                         "a roller of " + number(roller.diameter) + " reaches up to the contact edge's end",
                         "raise formers.min_depth, or set press.guide_rollers = false");
  const Vec2 from = end.edge.front(), to = end.edge.back();
  const Vec2 at = from + (to - from) * ((from.y() - top) / (from.y() - to.y()));
  if (end.side * at.x() > end.side * x + kSamePoint)
    end.edge = {from, at, {x, top}, {x, 0}};
  else
    end.edge = {from, shoulder(end, x, top), {x, 0}};
}

void strap_end(const Layout& in, End& end) {
  const double drop = strap_drop(in.job.beams);
  end.strap = in.rollers
                  ? roller_strap(end, drop, in.free, in.job.straps.roller_diameter, in.job.straps.thickness)
                  : straight_strap(end, drop);
  end.strap.exit = in.job.straps.exit;
}

// One pass with given extensions; extensions may come out shorter, then another pass settles base and marks.
PressFrame pass(const Layout& in, End left, End right) {
  const double base = base_height(in, left, right);
  PressFrame frame{moved(in.curves, {0, -base}),
                   contact_edge(in, left.extend, right.extend).moved({0, -base}),
                   left,
                   right,
                   in.free,
                   0,
                   in.rollers};
  for (End* end : {&frame.left, &frame.right}) {
    end->caul.point.y() -= base;
    if (in.strapped) strap_end(in, *end);
    run_side(in, frame.contact, *end);
    if (end->sloped) draw_slope(frame.contact, *end);
    meet_roller(*end);
  }
  frame.height = frame.contact.box().high.y();
  return frame;
}

PressFrame settled(const Layout& in) {
  End left = end_of(in, -1), right = end_of(in, +1);
  const Vec2 left_caul = left.caul.point, right_caul = right.caul.point;
  PressFrame frame = pass(in, left, right);
  for (int i = 0; i < 4; ++i) {
    if (frame.left.extend == left.extend && frame.right.extend == right.extend) break;
    left = frame.left;
    right = frame.right;
    left.caul.point = left_caul;
    right.caul.point = right_caul;
    frame = pass(in, left, right);
  }
  return frame;
}

// A narrow foot between square sides steps out to 150 where that stays inside the strap.
void step_out(PressFrame& frame, bool strapped) {
  if (frame.sloped() || frame.foot() >= kLeastFoot - kAtLeast) return;
  const double each = (kLeastFoot - frame.foot()) / 2;
  PressFrame wider = frame;
  for (End* end : {&wider.left, &wider.right}) {
    const Vec2 top = end->edge.front();
    if (top.y() <= kFootStep + 10) return;
    const double x = top.x() + end->side * each;
    end->edge = {top, {top.x(), kFootStep}, {x, kFootStep}, {x, 0}};
    end->stepped = true;
    const bool clear =
        inside_strap(end->edge[2], end->caul.point, end->down, end->side) >= kStrapClear - kAtLeast &&
        inside_strap(end->edge[3], end->caul.point, end->down, end->side) >= kStrapClear - kAtLeast;
    if (strapped && !clear) return;
  }
  frame = wider;
}

double least_foot(const PressFrame& frame) { return std::max(kLeastFoot, frame.height / 3); }

bool foot_stands(const PressFrame& frame) {
  return !frame.sloped() || frame.foot() >= least_foot(frame) - kAtLeast;
}

bool legs_clear(const Layout& in, const PressFrame& frame) {
  const double row = (in.job.straps.holes - 1) * in.job.straps.hole_pitch;
  return frame.right.strap.mark.x() - frame.left.strap.mark.x() >= row + in.job.straps.hole + 5 - kAtLeast;
}

// The exit at which the sloped side would just reach the corner of a wide enough foot.
double needed_exit(const PressFrame& frame, const End& end) {
  const Vec2 top = end.edge.front();
  const Vec2 to = Vec2(end.side * least_foot(frame) / 2, 0) - top;
  const double fall = end.side > 0 ? end.caul.heading - std::atan2(to.y(), to.x())
                                   : std::atan2(to.y(), to.x()) - end.caul.heading - kPi;
  return degrees(std::remainder(fall, 2 * kPi));
}

[[noreturn]] void refuse_foot(const PressFrame& frame) {
  const End& end = frame.right.sloped ? frame.right : frame.left;
  const double needed = needed_exit(frame, end);
  const bool within = needed >= 20 && needed < degrees(end.strap.exit);
  const std::string way_out =
      within ? "set straps.exit to " + number(std::floor(needed * 10) / 10, 1) + " or less"
             : "a wide enough foot needs an exit of " + number(needed, 1) +
                   " degrees, allowed 20 to 30; use a larger radius, a smaller turn or a two-part mould";
  throw geometry_error("former",
                       "between straps that leave at " + number(degrees(end.strap.exit), 1) +
                           " degrees its foot is only " + number(std::max(0.0, frame.foot()), 1) + " wide; " +
                           number(least_foot(frame), 1) + " are needed",
                       "with a guide roller too, " + way_out);
}

}  // namespace

bool side_clears(const std::vector<Vec2>& side, const End& end, double free) {
  const Vec2 start = end.caul.point;
  const bool roller = end.strap.roller.has_value();
  const double run = roller ? (end.strap.roller->on - start).norm() : end.strap.run;
  const double zone = roller ? INFINITY : run - free - kSamePoint;
  for (std::size_t i = 0; i + 1 < side.size(); ++i) {
    const auto at = [&](double share) { return Vec2(side[i] + share * (side[i + 1] - side[i])); };
    const auto along = [&](double share) { return (at(share) - start).dot(end.down); };
    std::vector<double> shares{0, 1};  // and where the strap's end and the ratchet's zone begin
    const double slope = along(1) - along(0);
    for (const double mark : {run, zone})
      if (std::abs(slope) > kSamePoint && std::isfinite(mark))
        shares.push_back(std::clamp((mark - along(0)) / slope, 0.0, 1.0));
    for (const double share : shares) {
      if (along(share) > run + kSamePoint) continue;
      const double wanted = along(share) >= zone - kSamePoint ? kRatchetClear : kStrapClear;
      if (inside_strap(at(share), start, end.down, end.side) < wanted - kAtLeast) return false;
    }
  }
  return true;
}

PressFrame press_frame(const Job& job, const PressCurves& curves, bool strapped) {
  Layout in{job, curves, strapped, strapped && job.press.guide_rollers, job.straps.ratchet + kRatchetSpare};
  PressFrame frame = settled(in);
  if (strapped && !in.rollers && !foot_stands(frame)) {
    in.rollers = true;
    frame = settled(in);
  }
  if (strapped && !foot_stands(frame)) refuse_foot(frame);
  if (in.rollers && !legs_clear(in, frame))
    throw geometry_error("guide rollers",
                         "the straps beyond them would cross: their holes would stand " +
                             number(frame.right.strap.mark.x() - frame.left.strap.mark.x(), 1) + " apart",
                         job.press.guide_rollers ? "set press.guide_rollers = false"
                                                 : "use a larger radius, a smaller turn or a two-part mould");
  step_out(frame, strapped);
  return frame;
}

}  // namespace lamwright::one_part
