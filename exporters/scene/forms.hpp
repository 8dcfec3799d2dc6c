// Plain forms of pieces that are no parts: bands along a line, round bars, blocks, rings.
#pragma once
#include <string>
#include <vector>

#include "kernel/part/mesh.hpp"
#include "kernel/part/outline.hpp"

namespace lamwright::scene {

// Between a path and its parallel at `thickness` > 0 on its left side. Each segment begins where the one
// before ends; corners turn right and are rounded, or hardly turn at all. Throws Error (geometry, at `name`)
// where that is no simple outline.
Outline band(const std::vector<Segment>& path, double thickness, const std::string& name);

// About the Z axis, from 0 to `length`.
Mesh round_bar(double diameter, double length);

// A strap round something `across` wide (along X, middle at 0) and `up` high (along Y from 0), `width` along
// Z from 0. Its lower and upper side climb by `slope` along Z. An open one is its two legs alone.
struct RingSpec {
  double across = 0, up = 0, width = 0;
  double thickness = 0;
  double slope = 0;
  bool open = false;
};
Mesh ring(const RingSpec& spec);

}  // namespace lamwright::scene
