// Where pieces of a press go when it opens.
#pragma once
#include <cstddef>

#include "kernel/press/plan.hpp"

namespace lamwright::scene {

// Two halves part by the plan's opening: what lies over the pack lifts with the upper one, the panel hangs in
// the middle of the gap, loops draw off past the ends of the beams. Over a single mould everything above the
// lower cover is lifted layer by layer, in even steps, so that each is seen.
class Opening {
 public:
  explicit Opening(const PressPlan& plan);

  Vec3 of_body(const Body& body) const;
  Vec3 of_layer(std::size_t index) const;  // of plan.layers
  Vec3 of_pin(const Pin& pin) const;
  // A strap over the pack; with loops the left (side = -1) or the right one (+1).
  Vec3 of_strap(int side) const;

 private:
  Vec3 lifted(std::size_t steps) const { return {0, step_ * double(steps), 0}; }
  std::size_t layer_of_kind(Layer::Kind kind) const;

  const PressPlan& plan_;
  bool halves_ = false;
  std::size_t panel_ = 0;  // index of its layer
  double step_ = 0;        // mm
  double past_beams_ = 0;  // mm
};

}  // namespace lamwright::scene
