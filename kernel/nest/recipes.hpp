// Groups worth trying for the pieces of a nest.
#pragma once
#include "kernel/nest/layout.hpp"

namespace lamwright::nesting {

// Groups to be used up one after another while there are pieces for them, as indices; what is left is laid
// singly.
struct Recipe {
  std::vector<std::size_t> groups;
  double density = 0;  // the share of a large area that the first group would fill
};

struct Groups {
  std::vector<Group> all;       // the single pieces first
  std::vector<Recipe> recipes;  // densest first
  bool plain = false;           // most pieces lie in columns, and no others are worth a search
};

// Pairs of identical pieces, rows of them that cover a sheet from its left end, and pairs of two kinds: for
// the few kinds that take up most of the board and do not fill their box. Where all are small blocks, columns
// of them instead.
Groups groups(const std::vector<Shape>& shapes, const std::vector<int>& counts, const Board& board,
              NoFit& no_fit);

// Tokens of the recipe, then of single pieces, ordered by the cost of a piece (least first).
std::vector<Token> tokens(const Groups& groups, const std::vector<std::size_t>& recipe,
                          const std::vector<int>& counts, const std::vector<double>& cost);

}  // namespace lamwright::nesting
