// What a press plan holds at a place: the pieces that a plane cuts.
#pragma once
#include <vector>

#include "exporters/drawing/part_view.hpp"
#include "kernel/press/layers.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

struct Span {
  double low = 0;
  double high = 0;
  double middle() const { return (low + high) / 2; }
  double size() const { return high - low; }
};

// Extent of a body along Z.
Span depth_of(const PressPlan& plan, const Body& body);
// A piece of the moulds: neither the panel nor a slat of a caul, which is drawn as a layer.
bool of_mould(const PressPlan& plan, const Body& body);
bool former(PartKind kind);
// Pieces of the moulds that the plane Z = z cuts.
std::vector<const Body*> bodies_at(const PressPlan& plan, double z);
// Blocks on or from the far side of the former that the plane Z = z cuts: behind it, so hidden.
std::vector<const Body*> blocks_behind(const PressPlan& plan, double z);
// Outline of a body in the plane of X and Y.
std::vector<Segment> outline_of(const PressPlan& plan, const Body& body);

// Station of the former that the section is drawn at: the first on a strapped beam.
double section_station(const PressPlan& plan);
// The closure nearest to a station, or null.
const Closure* closure_at(const PressPlan& plan, double z);

// Stretches of the line X = x inside a closed loop, from below.
std::vector<Span> cut_at(const std::vector<Segment>& loop, double x);

}  // namespace lamwright::drawing
