#include "exporters/scene/opening.hpp"

#include <algorithm>

#include "exporters/scene/body_box.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::scene {
namespace {

constexpr double kStepShare = 0.2;  // of the press's height
constexpr double kLeastStep = 60;
constexpr double kPastBeams = 40;

// How far loops move sideways to be off the beams.
double past_beams(const PressPlan& plan, const Part::Box& box) {
  double most = 0;
  for (const Closure& closure : plan.closures)
    most = std::max({most, closure.left.mark.x() + closure.width / 2 - box.low.x(),
                     box.high.x() - closure.right.mark.x() + closure.width / 2});
  return most + kPastBeams;
}

}  // namespace

Opening::Opening(const PressPlan& plan)
    : plan_(plan), halves_(plan.opening.norm() > kSamePoint), panel_(layer_of_kind(Layer::Kind::panel)) {
  if (plan.bodies.empty()) return;
  const Part::Box box = box_of_bodies(plan);
  step_ = std::max(kLeastStep, kStepShare * box.size().y());
  past_beams_ = past_beams(plan, box);
}

std::size_t Opening::layer_of_kind(Layer::Kind kind) const {
  return std::size_t(std::find_if(plan_.layers.begin(), plan_.layers.end(),
                                  [&](const Layer& layer) { return layer.kind == kind; }) -
                     plan_.layers.begin());
}

Vec3 Opening::of_layer(std::size_t index) const {
  if (index < panel_) return {0, 0, 0};
  if (!halves_) return lifted(index - panel_ + 1);
  const Vec2 by = index == panel_ ? plan_.opening / 2 : plan_.opening;
  return {by.x(), by.y(), 0};
}

Vec3 Opening::of_body(const Body& body) const {
  if (body.group == Group::panel) return of_layer(panel_);
  if (body.group == Group::upper) return {plan_.opening.x(), plan_.opening.y(), 0};
  if (body.group == Group::reference) return of_layer(layer_of_kind(Layer::Kind::top_caul));
  const bool pressing = plan_.parts[body.part].kind() == PartKind::pressing_beam;
  return pressing ? of_layer(plan_.layers.size() + 1) : Vec3(0, 0, 0);  // over the straps
}

Vec3 Opening::of_pin(const Pin& pin) const {
  return pin.caul == Layer::Kind::bed_caul ? Vec3(0, 0, 0) : of_layer(layer_of_kind(pin.caul));
}

Vec3 Opening::of_strap(int side) const {
  if (halves_) return {side * past_beams_, 0, 0};
  return of_layer(plan_.layers.size());
}

}  // namespace lamwright::scene
