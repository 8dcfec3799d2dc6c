#include "exporters/scene/body_box.hpp"

namespace lamwright::scene {

Part::Box box_of(const PressPlan& plan, const Body& body) {
  const Part::Box own = plan.parts[body.part].box();
  Part::Box out{Vec3::Constant(INFINITY), Vec3::Constant(-INFINITY)};
  for (const double x : {own.low.x(), own.high.x()})
    for (const double y : {own.low.y(), own.high.y()})
      for (const double z : {own.low.z(), own.high.z()}) {
        const Vec3 p = body.placed.point({x, y, z});
        out = {out.low.cwiseMin(p), out.high.cwiseMax(p)};
      }
  return out;
}

Part::Box box_of_bodies(const PressPlan& plan) {
  Part::Box out{Vec3::Constant(INFINITY), Vec3::Constant(-INFINITY)};
  for (const Body& body : plan.bodies) {
    const Part::Box box = box_of(plan, body);
    out = {out.low.cwiseMin(box.low), out.high.cwiseMax(box.high)};
  }
  return out;
}

}  // namespace lamwright::scene
