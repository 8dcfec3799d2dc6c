// Strap loops of a press of two moulds: in section each is seen flat on, from the side edge on.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// What `hidden` covers of the stretch, and the rest of it, from below. Spans may overlap and come in any
// order.
struct Covered {
  std::vector<Span> hidden;
  std::vector<Span> visible;
};
Covered split(const Span& stretch, std::vector<Span> covers);

// Both loops at a station: the leg behind the beams, with its edges hidden where beams or formers stand
// before it, and the strap where it passes over the beams' outer faces.
void add_loops(Drawing& drawing, const PressPlan& plan, double z, const View& view);
// Everything that add_loops draws, model mm.
Box2 loops_box(const PressPlan& plan, double z);

// The loops beyond X = 0 seen along X, model (Z, Y). `before`: what stands in front of them.
void add_loops_edge_on(Drawing& drawing, const PressPlan& plan, const std::vector<Box2>& before,
                       const View& view);

}  // namespace lamwright::drawing
