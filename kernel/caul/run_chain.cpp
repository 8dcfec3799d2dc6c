#include "kernel/caul/run_chain.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <optional>
#include <utility>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kQuickWork = 4'000, kFullWork = 40'000;  // chains made at one run
constexpr int kMostNeeded = 1000;                              // slats in a run
constexpr std::size_t kLeastWidth = 20;
constexpr std::int64_t kNever = std::numeric_limits<std::int64_t>::max() / 4;

// A chain up to one run.
struct Open {
  RunCost cost{};
  RunCost promise{};  // no chain that goes on from here ends cheaper
  std::vector<int> use;
  ChainLink link;
  std::size_t before = 0;  // in the run before
};

struct Found {
  std::optional<RunChain> chain;
  std::optional<RunCost> dropped;  // the least that an open chain promised which was left out
};

// Runs of one rack that are still to come.
struct ToCome {
  int runs = 0, in_one = 0;
};

// The least that such runs cost with what is left on the rack, joints set aside: too little length for all of
// them leaves some out, and no fewer pieces do than the longest slats laid end to end.
RunCost rack_bound(const ChainSpec& spec, const std::vector<SharedSlats>& rack, ToCome to_come,
                   const std::vector<int>& use) {
  const auto left = [&](const SharedSlats& slats) {
    return slats.count ? spec.counts[*slats.count] - use[*slats.count] : to_come.runs * kMostNeeded;
  };
  double room = 0;
  int whole = 0;
  for (const SharedSlats& slats : rack) {
    room += left(slats) * slats.length;
    if (slats.length > spec.length - kSamePoint) whole += left(slats);
  }
  const int held = std::max(0, to_come.in_one - whole);
  const int rows = static_cast<int>(std::min<double>(to_come.runs, room / spec.length + kWholeNumber));
  const int out = std::max(held, to_come.runs - rows);
  RunCost bound{};
  bound[kUnmade] = out;
  bound[kUnmadeHeld] = held;
  double need = (to_come.runs - out) * spec.length;
  for (const SharedSlats& slats : rack) {
    if (need < kSamePoint) break;
    const int taken = std::min(left(slats), static_cast<int>(std::ceil(need / slats.length - kWholeNumber)));
    bound[kPieces] += taken;
    need -= taken * slats.length;
  }
  return bound;
}

class Search {
 public:
  explicit Search(const ChainSpec& spec) : spec_(spec), runs_(spec.kind_of.size()) {
    match_neighbours();
    bound_rest();
    count_to_come();
  }

  // Chains to keep open at a run so that no more than `work` are made of them.
  std::size_t width(std::size_t work) const {
    std::size_t ways = 1;
    for (const auto& kind : spec_.kinds) {
      std::size_t sum = 0;
      for (const RunOption& option : kind) sum += option.choices.size();
      ways = std::max(ways, sum);
    }
    return std::max<std::size_t>(kLeastWidth, work / ways);
  }

  // The best chain below `most`, with so many kept open.
  Found best(std::size_t width, const std::optional<RunCost>& most) const {
    std::vector<std::vector<Open>> stages;
    std::optional<RunCost> dropped;
    for (std::size_t run = 0; run < runs_; ++run) {
      stages.push_back(step(run, run == 0 ? std::vector<Open>{start()} : stages.back(), most, width + 1));
      if (stages.back().empty()) return {std::nullopt, dropped};
      if (stages.back().size() <= width) continue;
      if (!dropped || stages.back()[width].promise < *dropped) dropped = stages.back()[width].promise;
      stages.back().resize(width);
    }
    RunChain chain = traced(stages);
    chain.proven = !dropped || !(*dropped < chain.cost);
    return {chain, dropped};
  }

 private:
  using Matches = std::vector<std::vector<bool>>;  // option, option after

  Open start() const { return {{}, {}, std::vector<int>(spec_.counts.size(), 0), {}, 0}; }
  const std::vector<RunOption>& options(std::size_t run) const { return spec_.kinds[spec_.kind_of[run]]; }
  bool match(std::size_t run, std::size_t before, std::size_t option) const {
    return run == 0 || matches_[spec_.kind_of[run - 1]][spec_.kind_of[run]][before][option];
  }

  // Only kinds that lie beside one another somewhere are compared.
  void match_neighbours() {
    matches_.resize(spec_.kinds.size(), std::vector<Matches>(spec_.kinds.size()));
    for (std::size_t run = 1; run < runs_; ++run) {
      const std::size_t before = spec_.kind_of[run - 1], after = spec_.kind_of[run];
      if (Matches& table = matches_[before][after]; table.empty())
        for (const RunOption& one : spec_.kinds[before]) {
          auto& row = table.emplace_back();
          for (const RunOption& other : spec_.kinds[after])
            row.push_back(go_together(one, other, spec_.bridge));
        }
    }
  }

  // The least that the runs after one may cost, counts set aside.
  void bound_rest() {
    rest_.resize(runs_);
    for (std::size_t run = runs_; run-- > 0;) {
      rest_[run].assign(options(run).size(), RunCost{});
      if (run + 1 == runs_) continue;
      const std::vector<Next> next = cheapest_first(run + 1);
      for (std::size_t a = 0; a < options(run).size(); ++a) rest_[run][a] = least_after(run, a, next);
    }
  }

  void count_to_come() {
    to_come_.assign(runs_, std::vector<ToCome>(spec_.racks.size()));
    for (std::size_t run = runs_ - 1; run-- > 0;) {
      to_come_[run] = to_come_[run + 1];
      const DrawnOn& draws = spec_.draws[spec_.kind_of[run + 1]];
      to_come_[run][draws.rack].runs += 1;
      to_come_[run][draws.rack].in_one += draws.in_one ? 1 : 0;
    }
  }

  RunCost promise(std::size_t run, const RunCost& cost, std::size_t option,
                  const std::vector<int>& use) const {
    RunCost racks{};
    for (std::size_t r = 0; r < spec_.racks.size(); ++r)
      racks = racks + rack_bound(spec_, spec_.racks[r], to_come_[run][r], use);
    return cost + std::max(racks, rest_[run][option]);
  }

  // An option of a run with the least that it and the runs after it may cost.
  struct Next {
    RunCost cost{};
    std::size_t option = 0;
  };

  std::vector<Next> cheapest_first(std::size_t run) const {
    std::vector<Next> out;
    for (std::size_t b = 0; b < options(run).size(); ++b)
      out.push_back({options(run)[b].choices.front().cost + rest_[run][b], b});
    std::sort(out.begin(), out.end(), [](const Next& a, const Next& b) { return a.cost < b.cost; });
    return out;
  }

  RunCost least_after(std::size_t run, std::size_t option, const std::vector<Next>& next) const {
    RunCost never;
    never.fill(kNever);
    const auto first = std::find_if(next.begin(), next.end(),
                                    [&](const Next& n) { return match(run + 1, option, n.option); });
    return first == next.end() ? never : std::min(never, first->cost);
  }

  bool in_stock(const std::vector<int>& a, const std::vector<int>& b) const {
    for (std::size_t i = 0; i < spec_.counts.size(); ++i)
      if (a[i] + b[i] > spec_.counts[i]) return false;
    return true;
  }

  // At most `count` of them, those that promise the least first.
  std::vector<Open> step(std::size_t run, const std::vector<Open>& before, const std::optional<RunCost>& most,
                         std::size_t count) const {
    std::vector<Open> all;
    for (std::size_t b = 0; b < options(run).size(); ++b) add_ways_to(run, b, before, most, all);
    std::vector<std::size_t> order(all.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto end = order.begin() + static_cast<std::ptrdiff_t>(std::min(count, order.size()));
    std::partial_sort(order.begin(), end, order.end(), [&](std::size_t x, std::size_t y) {
      return all[x].promise < all[y].promise || (all[x].promise == all[y].promise && x < y);
    });
    std::vector<Open> out;
    for (auto i = order.begin(); i != end; ++i) out.push_back(std::move(all[*i]));
    return out;
  }

  // How a chain may go on with an option.
  struct Way {
    RunCost cost{};
    std::size_t choice = 0, before = 0;
  };

  // Chains that end in one option, beaten ones left out. What a chain promises never falls when it costs or
  // uses more, so a beaten one promises no less.
  void add_ways_to(std::size_t run, std::size_t option, const std::vector<Open>& before,
                   const std::optional<RunCost>& most, std::vector<Open>& out) const {
    const auto& choices = options(run)[option].choices;
    for (const auto& [way, use] : unbeaten(ways_to(run, option, before, most), before, choices)) {
      const RunCost promised = promise(run, way.cost, option, use);
      if (!most || promised < *most)
        out.push_back({way.cost, promised, use, {option, way.choice}, way.before});
    }
  }

  std::vector<Way> ways_to(std::size_t run, std::size_t option, const std::vector<Open>& before,
                           const std::optional<RunCost>& most) const {
    std::vector<Way> ways;
    const auto& choices = options(run)[option].choices;
    for (std::size_t i = 0; i < before.size(); ++i) {
      if (!match(run, before[i].link.option, option)) continue;
      for (std::size_t c = 0; c < choices.size(); ++c) {
        const RunCost cost = before[i].cost + choices[c].cost;
        if (most && !(cost + rest_[run][option] < *most)) continue;
        if (in_stock(before[i].use, choices[c].use)) ways.push_back({cost, c, i});
      }
    }
    return ways;
  }

  std::vector<std::pair<Way, std::vector<int>>> unbeaten(std::vector<Way> ways,
                                                         const std::vector<Open>& before,
                                                         const std::vector<SlatChoice>& choices) const {
    const auto cheaper = [](const Way& a, const Way& b) { return a.cost < b.cost; };
    std::vector<std::pair<Way, std::vector<int>>> kept;
    if (ways.empty()) return kept;
    if (spec_.counts.empty()) return {{*std::min_element(ways.begin(), ways.end(), cheaper), {}}};
    std::stable_sort(ways.begin(), ways.end(), cheaper);
    const auto beats = [](const std::vector<int>& a, const std::vector<int>& b) {
      return std::equal(a.begin(), a.end(), b.begin(), std::less_equal<>());
    };
    std::vector<int> use(spec_.counts.size());
    for (const Way& way : ways) {
      std::transform(before[way.before].use.begin(), before[way.before].use.end(),
                     choices[way.choice].use.begin(), use.begin(), std::plus<>());
      if (std::none_of(kept.begin(), kept.end(), [&](const auto& k) { return beats(k.second, use); }))
        kept.emplace_back(way, use);
    }
    return kept;
  }

  RunChain traced(const std::vector<std::vector<Open>>& stages) const {
    RunChain chain{{}, std::vector<ChainLink>(runs_), true};
    std::size_t at = 0;  // the last stage is in order of cost
    for (std::size_t run = runs_; run-- > 0;) {
      const Open& open = stages[run][at];
      if (run + 1 == runs_) chain.cost = open.cost;
      chain.links[run] = open.link;
      at = open.before;
    }
    return chain;
  }

  const ChainSpec& spec_;
  std::size_t runs_;
  std::vector<std::vector<Matches>> matches_;  // kind, kind after
  std::vector<std::vector<RunCost>> rest_;
  std::vector<std::vector<ToCome>> to_come_;  // after each run, from each rack
};

}  // namespace

std::vector<SharedSlats> shared_slats(const RunKind& kind, double length, const ChoiceStock& stock) {
  std::vector<SharedSlats> out;
  for (const std::size_t i : kind.stock) {
    const auto found = std::find(stock.counted.begin(), stock.counted.end(), i);
    SharedSlats slats{std::min(length, stock.lengths[i]), std::nullopt};
    if (found != stock.counted.end()) slats.count = static_cast<std::size_t>(found - stock.counted.begin());
    out.push_back(slats);
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const SharedSlats& a, const SharedSlats& b) { return a.length > b.length; });
  return out;
}

RunChain cheapest_chain(const ChainSpec& spec, Effort effort) {
  if (spec.kind_of.empty()) return {};
  const Search search(spec);
  RunChain quick = *search.best(search.width(kQuickWork), std::nullopt).chain;
  if (quick.proven || effort == Effort::quick) return quick;
  const Found full = search.best(search.width(kFullWork), quick.cost);
  if (full.chain) return *full.chain;
  quick.proven = !full.dropped || !(*full.dropped < quick.cost);
  return quick;
}

}  // namespace lamwright
