// The points that a bore's wall shares with what it runs into.
#pragma once
#include <string>
#include <vector>

#include "kernel/part/surface/cutter.hpp"

namespace lamwright::surface {

// A mouth in the side as two lines of points along the rails, below and above, with their ends in common.
struct SideMouth {
  Mouth mouth;
  Span span;
  std::vector<Vec3> lower, upper;
  std::vector<std::size_t> on_rail;  // which of them lie on the rails span.first to span.last
};

// Sheet coordinates. `first` and `last` are rings of as many points as `units`, one opposite the other.
struct Bored {
  Cutter cutter;
  std::vector<Vec2> units;  // unit vectors in the cutter's x and y, anticlockwise
  std::vector<Vec3> first, last;
  std::vector<SideMouth> mouths;

  Vec3 outward(std::size_t i) const { return units[i].x() * cutter.x + units[i].y() * cutter.y; }
};

// The rails must hold the ends of all mouths of the cutter. Throws as span() does.
Bored bored(const Cutter& cutter, const Rails& rails, const MeshSpec& spec, const std::string& part);

}  // namespace lamwright::surface
