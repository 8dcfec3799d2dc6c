// Layers of a press as lines in cross-section, and the pins that stand in them.
#pragma once
#include <vector>

#include "kernel/press/plan.hpp"
#include "kernel/profile/segment.hpp"

namespace lamwright {

// The first of a kind from the former outward; null where the press has none.
const Layer* layer_of(const PressPlan& plan, Layer::Kind kind);

// Inner and outer line of a layer and its ends, closed.
std::vector<Segment> layer_loop(const Layer& layer);

// What lies on the pack's outer side and lifts with an upper mould: sheets and slats, the pack's side first.
std::vector<Layer> lifted_layers(const PressPlan& plan);

// A pin's axis in the plane of X and Y, outward: through the caul that it stands in and the pack, and a
// little into what lies opposite; in the top caul of a single mould, to the pack's inner side.
Segment pin_line(const PressPlan& plan, const Pin& pin);

}  // namespace lamwright
