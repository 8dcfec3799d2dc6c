#include "kernel/nest/recipes.hpp"

#include <cmath>
#include <numeric>

#include "kernel/nest/columns.hpp"
#include "kernel/nest/pairs.hpp"

namespace lamwright::nesting {
namespace {

constexpr std::size_t kKinds = 4;  // kinds for which groups are sought
constexpr std::size_t kPairs = 2;  // pairs kept by each measure

bool worth_grouping(const Shape& shape, int count, const Board& board) {
  return count >= 2 && !fills_box(shape) && !small(shape, board);
}

std::vector<std::size_t> kinds(const std::vector<Shape>& shapes, const std::vector<int>& counts,
                               const Board& board) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < shapes.size(); ++i)
    if (worth_grouping(shapes[i], counts[i], board)) out.push_back(i);
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) {
    return shapes[a].area * counts[a] > shapes[b].area * counts[b];
  });
  if (out.size() > kKinds) out.resize(kKinds);
  return out;
}

class Maker {
 public:
  Maker(const std::vector<Shape>& shapes, const std::vector<int>& counts, const Board& board, NoFit& no_fit)
      : shapes_(shapes), counts_(counts), board_(board), no_fit_(no_fit) {
    for (std::size_t i = 0; i < shapes.size(); ++i) groups_.all.push_back(single(shapes, i));
  }

  void add_identical(std::size_t kind) {
    const Group singles = groups_.all[kind];
    for (const Arrangement& one : singles) add_rows(one, counts_[kind], {});
    for (const Arrangement& pair : pairs(shapes_, kind, kind, kPairs, no_fit_)) {
      const std::size_t whole = add_pair(pair);
      const Group turns = groups_.all[whole];
      for (const Arrangement& turned : turns) add_rows(turned, counts_[kind] / 2, {whole});
    }
  }

  void add_mixed(std::size_t first, std::size_t second) {
    for (const Arrangement& pair : pairs(shapes_, first, second, 1, no_fit_)) {
      const std::size_t whole = add_pair(pair);
      const Group turns = groups_.all[whole];
      for (const Arrangement& turned : turns)
        add_rows(turned, std::min(counts_[first], counts_[second]), {whole});
    }
  }

  // True when most pieces lie in them.
  bool add_columns() {
    Recipe recipe{{}, 1};
    std::size_t pieces = 0;
    for (const Arrangement& board : columns(shapes_, counts_, board_, no_fit_)) {
      pieces += board.members.size();
      recipe.groups.push_back(add({board}));
    }
    if (pieces > 0) groups_.recipes.push_back(std::move(recipe));
    return 2 * pieces > static_cast<std::size_t>(std::accumulate(counts_.begin(), counts_.end(), 0));
  }

  Groups made() {
    std::stable_sort(groups_.recipes.begin(), groups_.recipes.end(),
                     [](const Recipe& a, const Recipe& b) { return a.density > b.density; });
    return std::move(groups_);
  }

 private:
  std::size_t add(Group group) {
    groups_.all.push_back(std::move(group));
    return groups_.all.size() - 1;
  }

  double area(const Arrangement& of) const {
    double out = 0;
    for (const Member& m : of.members) out += shapes_[m.piece].area;
    return out;
  }

  std::size_t add_pair(const Arrangement& pair) {
    const double along = static_cast<double>(pitch(pair, 0, no_fit_)) * pair.size.y();
    const double up = static_cast<double>(pitch(pair, 1, no_fit_)) * pair.size.x();
    const std::size_t whole = add(all_turns(pair, shapes_));
    groups_.recipes.push_back({{whole}, area(pair) / std::min({along, up, pair.size.x() * pair.size.y()})});
    return whole;
  }

  int fit(double room, double first, Grid step) const {
    return 1 + static_cast<int>(std::floor((room - first) / static_cast<double>(step)));
  }

  // Rows across the board side by side until the board, or the pieces, come to an end; then another such
  // block for the last board.
  void add_rows(const Arrangement& of, int most, const std::vector<std::size_t>& then) {
    if (((of.size - board_.size).array() > 0).any()) return;
    const int across = std::min(most, fit(board_.size.y(), of.size.y(), pitch(of, 1, no_fit_)));
    if (across < 1) return;
    const Arrangement one = row(of, shapes_, 1, across, no_fit_);
    if (((one.size - board_.size).array() > 0).any()) return;
    const int along = std::min(most / across, fit(board_.size.x(), one.size.x(), pitch(one, 0, no_fit_)));
    Recipe recipe{{}, 0};
    for (const int rows : {along, (most / across) % along}) {
      if (rows * across < 2) continue;
      Arrangement block = row(one, shapes_, 0, rows, no_fit_);
      recipe.density = std::max(recipe.density, area(block) / (block.size.x() * board_.size.y()));
      block.begins = true;
      recipe.groups.push_back(add({std::move(block)}));
    }
    if (recipe.groups.empty()) return;
    recipe.groups.insert(recipe.groups.end(), then.begin(), then.end());
    groups_.recipes.push_back(std::move(recipe));
  }

  const std::vector<Shape>& shapes_;
  const std::vector<int>& counts_;
  const Board& board_;
  NoFit& no_fit_;
  Groups groups_;
};

}  // namespace

Groups groups(const std::vector<Shape>& shapes, const std::vector<int>& counts, const Board& board,
              NoFit& no_fit) {
  Maker maker(shapes, counts, board, no_fit);
  const auto block = [&](const Shape& shape) { return small(shape, board) && fills_box(shape); };
  if (std::all_of(shapes.begin(), shapes.end(), block)) {
    const bool plain = maker.add_columns();
    Groups out = maker.made();
    out.plain = plain;
    return out;
  }
  const std::vector<std::size_t> large = kinds(shapes, counts, board);
  for (const std::size_t kind : large) maker.add_identical(kind);
  for (std::size_t i = 0; i < large.size(); ++i)
    for (std::size_t j = 0; j < large.size(); ++j)
      if (i != j) maker.add_mixed(large[i], large[j]);
  return maker.made();
}

std::vector<Token> tokens(const Groups& groups, const std::vector<std::size_t>& recipe,
                          const std::vector<int>& counts, const std::vector<double>& cost) {
  std::vector<int> left = counts;
  std::vector<Token> out;
  const auto take = [&](std::size_t group) {
    std::vector<int> rest = left;
    for (const Member& m : groups.all[group].front().members)
      if (--rest[m.piece] < 0) return false;
    left = rest;
    out.push_back({group, -1});
    return true;
  };
  for (const std::size_t group : recipe)
    while (take(group)) {
    }
  for (std::size_t piece = 0; piece < counts.size(); ++piece)
    while (take(piece)) {
    }
  const auto of = [&](const Token& t) {
    double least = INFINITY;
    if (groups.all[t.group].front().begins) return -least;
    for (const Member& m : groups.all[t.group].front().members) least = std::min(least, cost[m.piece]);
    return least;
  };
  std::stable_sort(out.begin(), out.end(), [&](const Token& a, const Token& b) { return of(a) < of(b); });
  return out;
}

}  // namespace lamwright::nesting
