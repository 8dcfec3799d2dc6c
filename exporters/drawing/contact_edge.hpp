// The contact edge of a former in figures, to lay it out by hand.
#pragma once
#include <vector>

#include "exporters/drawing/curved_edge.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Its lines and arcs, and its points every 50 along X with their heights. None without a contact edge, and
// for a crowned one, which is too flat for radii.
std::vector<Table> contact_tables(const PressPlan& plan, std::size_t part);

// What heights above a level foot are called and measured from; nothing where Y says it, or the foot leans.
std::optional<HeightsFrom> heights_of(const PressPlan& plan, std::size_t part);

}  // namespace lamwright::drawing
