#include "exporters/scene/straps.hpp"

#include <algorithm>

#include "exporters/scene/body_box.hpp"
#include "exporters/scene/forms.hpp"
#include "kernel/press/layers.hpp"
#include "kernel/press/strap_path.hpp"
#include "shared/error.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::scene {
namespace {

// Of a ratchet, common practice, no source. It stands out of the strap's line by less than the section keeps
// free beside it, and toward the former by no more than a strap keeps off one.
constexpr double kRatchetThick = 40, kRatchetWider = 20, kRatchetInside = 10;

// Of the strap's free run, from the mark.
struct Place {
  double from = 0;
  double length = 0;
};

// In the middle of the room that the section shows; a staggered one farther on, as far as the run goes.
Place ratchet_place(const PressPlan& plan, const Closure& closure, const StrapEnd& end) {
  const double run = (run_start(end) - end.mark).norm(), length = std::min(closure.ratchet, run);
  const double from = (std::min(ratchet_space(plan, closure), run) - length) / 2;
  return {closure.staggered ? std::min(from + length, run - length) : from, length};
}

// Length along X, thickness along Y, width along Z.
Shape ratchet(const Closure& closure, double length) {
  return {"ratchet", closure.hardware,
          extruded(rectangle({0, 0}, {length, kRatchetThick}), closure.width + kRatchetWider)};
}

// On the strap in the plane of its former.
Frame ratchet_frame(const Closure& closure, const StrapEnd& end, const Place& place, int side) {
  const Vec2 up = (run_start(end) - end.mark).normalized();
  const Vec2 along = -side * up, out = left_of(along);
  const Vec2 corner =
      end.mark + (side < 0 ? place.from : place.from + place.length) * up - kRatchetInside * out;
  return {{corner.x(), corner.y(), closure.z - (closure.width + kRatchetWider) / 2},
          {along.x(), along.y(), 0},
          {out.x(), out.y(), 0}};
}

// On a loop's near leg, outside it.
Frame ratchet_frame(const Closure& closure, const StrapEnd& end, const Place& place, double near) {
  return {{end.mark.x() + (closure.width + kRatchetWider) / 2, end.mark.y() + place.from, near},
          {0, 1, 0},
          {0, 0, -1}};
}

Shape roller(const Closure& closure, const Roller& roller) {
  return {"roller", {}, round_bar(roller.diameter, closure.width)};
}

void add_over(const PressPlan& plan, const Closure& closure, const Opening& opening, Gathering& to) {
  const double near = closure.z - closure.width / 2;
  const Shape strap{"strap", closure.hardware,
                    extruded(band(strap_path(plan, closure), kBand, "strap"), closure.width)};
  to.add_counted(strap, {{0, 0, near}, {1, 0, 0}, {0, 1, 0}}, Kind::strap, opening.of_strap(-1));
  for (const int side : {-1, 1}) {
    const StrapEnd& end = side < 0 ? closure.left : closure.right;
    const Place place = ratchet_place(plan, closure, end);
    if (place.length > kSamePoint)
      to.add_counted(ratchet(closure, place.length), ratchet_frame(closure, end, place, side), Kind::strap,
                     opening.of_strap(side));
    if (end.roller)
      to.add_counted(roller(closure, *end.roller),
                     {{end.roller->axis.x(), end.roller->axis.y(), near}, {1, 0, 0}, {0, 1, 0}}, Kind::block,
                     {0, 0, 0});
  }
}

// The beam that a loop passes round.
const Body* beam_at(const PressPlan& plan, double z) {
  for (const Body& body : plan.bodies) {
    if (body.group != Group::lower || plan.parts[body.part].kind() != PartKind::beam) continue;
    const Part::Box box = box_of(plan, body);
    if (z > box.low.z() && z < box.high.z()) return &body;
  }
  return nullptr;
}

void add_loops(const PressPlan& plan, const Closure& closure, const Opening& opening, Gathering& to) {
  const Body* beam = beam_at(plan, closure.z);
  ensure(beam != nullptr, "a loop passes round a beam");
  const Part::Box box = box_of(plan, *beam);
  const double slope = closure.loop->pinned ? 0 : beam->placed.x.y() / beam->placed.x.x();
  for (const int side : {-1, 1}) {
    const StrapEnd& end = side < 0 ? closure.left : closure.right;
    const double left = -closure.width / 2;  // from the loop's middle
    const RingSpec spec{box.size().z(), end.leaves.y() - end.mark.y(), closure.width, kBand,
                        slope,          closure.loop->pinned};
    const Frame placed{{end.mark.x() + left, end.mark.y() + slope * left, (box.low.z() + box.high.z()) / 2},
                       {0, 0, -1},
                       {0, 1, 0}};
    to.add_counted({"strap", closure.hardware, ring(spec)}, placed, Kind::strap, opening.of_strap(side));
    const Place place = ratchet_place(plan, closure, end);
    if (place.length > kSamePoint)
      to.add_counted(ratchet(closure, place.length), ratchet_frame(closure, end, place, box.low.z()),
                     Kind::strap, opening.of_strap(side));
  }
}

}  // namespace

void add_straps(const PressPlan& plan, const Opening& opening, Gathering& to) {
  for (const Closure& closure : plan.closures)
    closure.loop ? add_loops(plan, closure, opening, to) : add_over(plan, closure, opening, to);
}

void add_pins(const PressPlan& plan, const Opening& opening, Gathering& to) {
  for (const Pin& pin : plan.pins) {
    const Segment axis = pin_line(plan, pin);
    const Vec2 out = axis.tangent(0), across = left_of(out);
    // Square to both, so that the bar's own axis is the pin's.
    const Frame placed{{axis.from.x(), axis.from.y(), pin.at.z()}, {0, 0, 1}, {-across.x(), -across.y(), 0}};
    to.add_counted({"pin", {}, round_bar(pin.diameter, axis.length())}, placed, Kind::pin,
                   opening.of_pin(pin));
  }
}

}  // namespace lamwright::scene
