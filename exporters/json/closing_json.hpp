// What draws the press shut, as JSON: straps or loops station by station, clamps on flats.
#pragma once
#include "exporters/json/numbers.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// One a strap or pair of loops, nearest first: {at, hardware, width, tension, pull, staggered}; `tension` N
// at each ratchet, `pull` N of the station.
Json closures_json(const PressPlan& plan);
// One a flat: {girth: [from, to] on the neutral line, beams: pressing beams over it, clamps: [[x, y]] for
// each beam, force: N a clamp, load: N/mm}.
Json flats_json(const PressPlan& plan);

}  // namespace lamwright
