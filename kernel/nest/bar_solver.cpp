#include "kernel/nest/bar_solver.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/nest/bar_bounds.hpp"
#include "kernel/nest/bar_search.hpp"

namespace lamwright {
namespace {

// Search limits, in steps of some ten nanoseconds, so that an answer does not depend on the machine.
constexpr long kPartialSteps = 400000;
constexpr long kWholeSteps = 8000000;
constexpr long kRestSteps = 1500000;
// So many bars of each pattern of the relaxed cover are given back, in turn, before all are.
constexpr int kMostGivenBack = 3;

class Solver {
 public:
  explicit Solver(const BarTask& task)
      : task_(task),
        relaxed_(relaxed_cover(task.problem)),
        prices_(better_prices()),
        search_(task_.problem, prices_, task.costs) {}

  std::optional<BarCutting> run() {
    bound_ = search_.least(start_of(problem()));
    first_cuttings();
    for (int back = 0; back <= kMostGivenBack; ++back)
      if (const auto kept = kept_of_relaxed(back); !kept.empty()) improve(kept, {kPartialSteps});
    for (const std::size_t width : {2, 4, 12}) improve({}, {kPartialSteps, width});
    improve({}, {kWholeSteps});
    if (!best_) return std::nullopt;
    if (!open() || !search_.cut_off()) bound_ = best_cost();
    if (task_.kerf) lengthen_rest(*task_.kerf);
    return BarCutting{*best_, bound_};
  }

 private:
  const BarProblem& problem() const { return task_.problem; }
  Whole best_cost() const { return cost(problem(), *best_); }
  bool open() const { return !best_ || best_cost() > bound_; }

  BarPrices better_prices() const {
    BarPrices by_length = prices_by_length(problem());
    if (relaxed_.prices.item.empty() || relaxed_.bound < by_length.least(start_of(problem())))
      return by_length;
    return relaxed_.prices;
  }

  void offer(std::vector<BarPattern> bars) {
    if (!best_ || cost(problem(), bars) < best_cost()) best_ = std::move(bars);
  }

  void first_cuttings() {
    if (!task_.known.empty()) offer(task_.known);
    BarPrices longest_first = prices_;
    for (std::size_t i = 0; i < problem().items.size(); ++i)
      longest_first.item[i] = double(problem().items[i].size);
    for (const BarPrices& prices : {prices_by_length(problem()), prices_, longest_first})
      if (auto bars = filled_in_turn(problem(), prices, start_of(problem()))) offer(std::move(*bars));
  }

  // Whole bars of the relaxed cover, less `back` of each pattern.
  std::vector<BarPattern> kept_of_relaxed(int back) const {
    std::vector<BarPattern> kept;
    BarState state = start_of(problem());
    for (const UsedPattern& used : relaxed_.used)
      for (int n = int(used.times + 1e-6) - back; n > 0; --n) {
        BarPattern bar{used.pattern.kind, {}};
        for (const Taken& t : used.pattern.take)
          if (const int count = std::min(t.count, state.demand[t.item]); count > 0)
            bar.take.push_back({t.item, count});
        if (bar.take.empty() || state.bars[bar.kind] == 0) break;
        state = after(state, bar);
        kept.push_back(bar);
      }
    return kept;
  }

  Whole target() const { return best_ ? task_.costs.below(best_cost()) : dearer_than_all(); }

  Whole dearer_than_all() const {
    Whole sum = 0;
    for (const BarKind& kind : problem().kinds) sum += kind.cost * kind.count;
    return sum;
  }

  // Cheaper cuttings that keep these bars, until there is none.
  void improve(const std::vector<BarPattern>& kept, const SearchLimits& limits) {
    BarState state = start_of(problem());
    for (const BarPattern& bar : kept) state = after(state, bar);
    const Whole spent = cost(problem(), kept);
    while (open()) {
      auto bars = search_.within(state, target() - spent, limits);
      if (!bars) return;
      bars->insert(bars->begin(), kept.begin(), kept.end());
      offer(std::move(*bars));
    }
  }

  // What a bar's pattern leaves, without the tolerance of a fit; the same for kinds of any length.
  Whole unused(const BarPattern& bar) const { return problem().kinds[bar.kind].room - load(problem(), bar); }

  // Bars that leave more than any now, and what the others may cost, longest rest first.
  std::vector<RatedPattern> longer_rests(Whole than) {
    const BarState start = start_of(problem());
    const double to_lose = double(best_cost()) - prices_.least(start);
    std::vector<RatedPattern> all;
    for (std::size_t k = 0; k < problem().kinds.size(); ++k) {
      const Whole most = problem().kinds[k].room - than - 1;
      const auto more = search_.patterns(start, {int(k), std::nullopt, to_lose, most}, {kRestSteps / 10});
      all.insert(all.end(), more.begin(), more.end());
    }
    std::stable_sort(all.begin(), all.end(), [this](const RatedPattern& a, const RatedPattern& b) {
      return unused(a.pattern) > unused(b.pattern);
    });
    return all;
  }

  void lengthen_rest(Whole kerf) {
    Whole longest = kerf + 1;  // below this there is nothing left after the cut
    for (const BarPattern& bar : *best_) longest = std::max(longest, unused(bar));
    const std::vector<RatedPattern> candidates = longer_rests(longest);
    const long steps = kRestSteps / long(candidates.size() + 1) + 1000;
    long left = kRestSteps;
    for (const RatedPattern& with_rest : candidates) {
      if ((left -= steps) < 0) return;
      const BarState others = after(start_of(problem()), with_rest.pattern);
      auto bars = search_.within(others, best_cost() - cost(problem(), with_rest.pattern), {steps});
      if (!bars) continue;
      bars->push_back(with_rest.pattern);
      best_ = std::move(bars);
      return;
    }
  }

  const BarTask& task_;
  CoveringResult relaxed_;
  BarPrices prices_;
  BarSearch search_;
  std::optional<std::vector<BarPattern>> best_;
  Whole bound_ = 0;
};

}  // namespace

std::optional<BarCutting> cheapest_cutting(const BarTask& task) {
  if (task.problem.items.empty()) return BarCutting{};
  return Solver(task).run();
}

}  // namespace lamwright
