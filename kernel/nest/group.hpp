// What the search lays down at once: one piece, or several that lie well together.
#pragma once
#include "kernel/nest/no_fit.hpp"

namespace lamwright::nesting {

struct Member {
  std::size_t piece = 0;
  int turn = 0;
  GridPoint at;  // of the low corner of its box, from that of the group's box
};

// Members in one turn of the whole group; `size` is that of their box, in units of the grid.
struct Arrangement {
  std::vector<Member> members;
  Vec2 size{0, 0};
  bool begins = false;  // lies at the low corner of an empty sheet, nowhere else
};

// The turns in which a group may lie; each has the same members.
using Group = std::vector<Arrangement>;

// Members with the low corner of their box moved to (0, 0).
Arrangement settled(std::vector<Member> members, const std::vector<Shape>& shapes);
// In all turns of the whole that each member allows.
Group all_turns(const Arrangement& first, const std::vector<Shape>& shapes);
Group single(const std::vector<Shape>& shapes, std::size_t piece);

// How far one arrangement must be shifted from the place of another along x (axis 0) or y (axis 1) to clear
// it.
Grid clearance(const Arrangement& lying, const Arrangement& moving, int axis, NoFit& no_fit);
// To clear itself.
Grid pitch(const Arrangement& of, int axis, NoFit& no_fit);
// `count` of the arrangement side by side along an axis.
Arrangement row(const Arrangement& of, const std::vector<Shape>& shapes, int axis, int count, NoFit& no_fit);

}  // namespace lamwright::nesting
