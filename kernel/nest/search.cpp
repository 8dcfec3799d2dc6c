#include "kernel/nest/search.hpp"

#include <cmath>

#include "kernel/nest/dice.hpp"
#include "kernel/nest/recipes.hpp"
#include "kernel/nest/squeeze.hpp"

namespace lamwright::nesting {
namespace {

struct Candidate {
  std::vector<Token> tokens;
  Rule rule = Rule::right_end;
  Score score;
};

// Costs by which pieces are ordered, least first: area, longer side, shorter side.
std::vector<std::vector<double>> costs(const std::vector<Shape>& shapes) {
  std::vector<std::vector<double>> out(3);
  for (const Shape& s : shapes) {
    out[0].push_back(-s.area);
    out[1].push_back(-s.size[0].maxCoeff());
    out[2].push_back(-s.size[0].minCoeff());
  }
  return out;
}

class Search {
 public:
  explicit Search(const SearchSpec& spec)
      : spec_(spec),
        no_fit_(spec_.shapes, spec_.spacing),
        groups_(groups(spec_.shapes, spec_.counts, spec_.board, no_fit_)),
        layout_(spec_.shapes, groups_.all, spec_.board, no_fit_) {}

  // A sixth of the effort goes into laying pieces one after another, half of that at most into orders and
  // groups; the rest into moving pieces together.
  SearchResult run() {
    if (groups_.plain) return in_columns();
    try_orders(-1);
    try_recipes();
    for (const int turn : {0, 1}) try_orders(turn);
    improve();
    SearchResult out = laid();
    if (out.sheets.empty()) return out;
    const SqueezeSpec squeeze{spec_.shapes, spec_.board.size, spec_.effort - spec_.effort / 6, spec_.step};
    out.sheets = squeezed(out.sheets, squeeze, no_fit_);
    return out;
  }

 private:
  SearchResult laid() {
    layout_.lay(best_.tokens, best_.rule, work_);
    return {layout_.sheets(), layout_.left_over()};
  }

  // What is left over columns goes beside and above them, from below as a hand would lay it.
  SearchResult in_columns() {
    const std::vector<std::size_t>& columns = groups_.recipes.front().groups;
    keep(evaluated(tokens(groups_, columns, spec_.counts, costs(spec_.shapes).front()), Rule::column));
    return laid();
  }

  bool spent() const { return work_ > spec_.effort / 6; }

  Candidate evaluated(std::vector<Token> tokens, Rule rule) {
    if (spec_.step) spec_.step();
    const Score score = layout_.lay(tokens, rule, work_);
    return {std::move(tokens), rule, score};
  }

  void keep(const Candidate& c) {
    if (best_.tokens.empty() || c.score < best_.score) best_ = c;
  }

  // Single pieces, each in its best turn (-1) or all in the same one of theirs.
  void try_orders(int turn) {
    for (const std::vector<double>& cost : costs(spec_.shapes))
      for (int rule = 0; rule < kRules; ++rule) {
        if (work_ > spec_.effort / 12 && !best_.tokens.empty()) return;
        std::vector<Token> order = tokens(groups_, {}, spec_.counts, cost);
        for (Token& t : order) t.turn = std::min(turn, static_cast<int>(groups_.all[t.group].size()) - 1);
        const Candidate c = evaluated(std::move(order), static_cast<Rule>(rule));
        if (best_.tokens.empty() || c.score < best_.score) cost_ = cost;
        keep(c);
      }
  }

  // Adds one recipe at a time to the ones that helped so far, as long as one helps.
  void try_recipes() {
    std::vector<std::size_t> chosen;
    for (bool better = true; better;) {
      better = false;
      std::vector<std::size_t> best_groups;
      for (const Recipe& recipe : groups_.recipes) {
        std::vector<std::size_t> longer = chosen;
        longer.insert(longer.end(), recipe.groups.begin(), recipe.groups.end());
        for (const Rule rule : {Rule::right_end, Rule::left_end, Rule::middle}) {
          if (work_ > spec_.effort / 12) return;
          const Candidate c = evaluated(tokens(groups_, longer, spec_.counts, cost_), rule);
          if (!(c.score < best_.score)) continue;
          keep(c);
          best_groups = longer;
          better = true;
        }
      }
      if (better) chosen = best_groups;
    }
  }

  std::vector<Token> changed(std::vector<Token> tokens) {
    const std::size_t n = tokens.size(), i = dice_.below(n), j = dice_.below(n);
    switch (dice_.below(4)) {
      case 0: {
        const Token moved = tokens[i];
        tokens.erase(tokens.begin() + static_cast<std::ptrdiff_t>(i));
        tokens.insert(tokens.begin() + static_cast<std::ptrdiff_t>(j), moved);
        break;
      }
      case 1:
        tokens[i].turn = static_cast<int>(dice_.below(groups_.all[tokens[i].group].size() + 1)) - 1;
        break;
      default:
        std::swap(tokens[i], tokens[j]);
    }
    return tokens;
  }

  // Late acceptance (Burke and Bykov 2017): a step may be worse than the last, not than the one some steps
  // ago. Ends early when nothing has been gained for long.
  void improve() {
    constexpr std::size_t kMemory = 8;
    const std::size_t patience = 1000 + 20 * best_.tokens.size();
    Candidate now = best_;
    std::vector<Score> memory(kMemory, now.score);
    for (std::size_t round = 0, gained = 0; !spent() && round < gained + patience; ++round) {
      std::vector<Token> next = changed(now.tokens);
      if (next == now.tokens) continue;
      const Candidate c = evaluated(std::move(next), now.rule);
      Score& before = memory[round % kMemory];
      if (!(now.score < c.score) || !(before < c.score)) now = c;
      before = now.score;
      if (now.score < best_.score) gained = round;
      keep(now);
    }
  }

  const SearchSpec& spec_;
  NoFit no_fit_;
  Groups groups_;
  Layout layout_;
  std::vector<double> cost_;
  Candidate best_;
  Dice dice_;
  std::int64_t work_ = 0;
};

}  // namespace

SearchResult search(const SearchSpec& spec) { return Search(spec).run(); }

}  // namespace lamwright::nesting
