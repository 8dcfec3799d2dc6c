// What closes a press and keeps its pack in place.
#pragma once
#include "exporters/scene/gathering.hpp"
#include "exporters/scene/opening.hpp"

namespace lamwright::scene {

// Thickness of a strap as shown; its row gives width and strength only. Common practice, no source.
inline constexpr double kBand = 2;

// Straps or loops, a block for each ratchet where the section has its room, rollers.
void add_straps(const PressPlan& plan, const Opening& opening, Gathering& to);
void add_pins(const PressPlan& plan, const Opening& opening, Gathering& to);

}  // namespace lamwright::scene
