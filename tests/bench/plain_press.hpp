// The plain way to the solids of a press: every piece made on its own, by extrusion and Boolean cuts.
#pragma once
#include <map>
#include <vector>

#include "kernel/press/plan.hpp"
#include "kernel/solid/solid.hpp"

namespace lamwright::bench {

// Solids of all formers and beams, by their part.
using PlainPress = std::map<std::size_t, std::vector<Solid>>;
PlainPress plain_press(const PressPlan& plan);

// A way that gives other volumes is not a way of doing the same.
bool same_volumes(const PlainPress& press, const PressPlan& plan);

}  // namespace lamwright::bench
