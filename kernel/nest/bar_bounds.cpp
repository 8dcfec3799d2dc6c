#include "kernel/nest/bar_bounds.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/nest/filling.hpp"

namespace lamwright {
namespace {

constexpr long kPricingSteps = 200000;
constexpr long kFillingSteps = 20000;
// A round costs the square of the rows; this much work in all.
constexpr double kRelaxationWork = 4e8;

FillingSpec filling_spec(const BarProblem& problem, const std::vector<double>& values,
                         std::vector<int> most) {
  FillingSpec spec{{}, values, std::move(most), 0, kFillingSteps};
  for (const BarItem& item : problem.items) spec.sizes.push_back(item.size);
  return spec;
}

std::optional<std::vector<WorthMost>> worth_most(const BarProblem& problem,
                                                 const std::vector<double>& prices) {
  FillingSpec spec = filling_spec(problem, prices, start_of(problem).demand);
  spec.steps = kPricingSteps;
  std::vector<WorthMost> all;
  for (const BarKind& kind : problem.kinds) {
    spec.room = kind.room;
    Filling filling = best_filling(spec);
    if (!filling.exact) return std::nullopt;
    all.push_back({std::move(filling.take), filling.value});
  }
  return all;
}

CoveringSpec covering_spec(const BarProblem& problem) {
  CoveringSpec spec;
  double dear = 0;
  for (const BarKind& kind : problem.kinds) {
    spec.kinds.push_back({double(kind.cost), std::nullopt});
    if (kind.counted) spec.kinds.back().count = kind.count;
    dear = std::max(dear, 10 * double(kind.cost));
  }
  for (const BarItem& item : problem.items) {
    spec.demand.push_back(item.count);
    spec.left_out.push_back(item.left_out == BarItem::kNever ? dear : double(item.left_out));
  }
  const double rows = double(problem.items.size() + problem.kinds.size());
  spec.most_rounds = int(std::min(4000.0, kRelaxationWork / (rows * rows)));
  return spec;
}

// The pattern around the longest piece that loses least, of all kinds there still are.
std::optional<BarPattern> next_bar(const BarProblem& problem, const BarPrices& prices,
                                   const BarState& state) {
  FillingSpec spec = filling_spec(problem, prices.item, state.demand);
  const auto wanted = std::find_if(state.demand.begin(), state.demand.end(), [](int n) { return n > 0; });
  const int longest = int(wanted - state.demand.begin());
  --spec.most[longest];
  std::optional<BarPattern> best;
  double least_lost = 0;
  for (std::size_t k = 0; k < problem.kinds.size(); ++k) {
    const BarKind& kind = problem.kinds[k];
    if (state.bars[k] == 0 || kind.room < problem.items[longest].size) continue;
    spec.room = kind.room - problem.items[longest].size;
    Filling filling = best_filling(spec);
    const double lost = double(kind.cost) + prices.bar[k] - filling.value;
    if (best && lost >= least_lost) continue;
    least_lost = lost;
    auto& take = filling.take;
    const auto same =
        std::find_if(take.begin(), take.end(), [=](const Taken& t) { return t.item == longest; });
    if (same == take.end())
      take.insert(take.begin(), {longest, 1});
    else
      ++same->count;
    best = BarPattern{int(k), take};
  }
  if (!best && problem.items[longest].left_out != BarItem::kNever)
    best = BarPattern{BarPattern::kLeftOut, {{longest, 1}}};
  return best;
}

}  // namespace

BarPrices prices_by_length(const BarProblem& problem) {
  BarPrices prices{{}, std::vector<double>(problem.kinds.size(), 0.0)};
  double for_length = INFINITY;
  for (const BarKind& kind : problem.kinds)
    for_length = std::min(for_length, double(kind.cost) / double(kind.room));
  for (const BarItem& item : problem.items) {
    const double price = double(item.size) * for_length;
    prices.item.push_back(item.left_out == BarItem::kNever ? price : std::min(price, double(item.left_out)));
  }
  return prices;
}

CoveringResult relaxed_cover(const BarProblem& problem) {
  return relaxed_cover(covering_spec(problem),
                       [&problem](const std::vector<double>& prices) { return worth_most(problem, prices); });
}

std::optional<std::vector<BarPattern>> filled_in_turn(const BarProblem& problem, const BarPrices& prices,
                                                      BarState state) {
  std::vector<BarPattern> bars;
  while (!nothing_left(state)) {
    std::optional<BarPattern> bar = next_bar(problem, prices, state);
    if (!bar) return std::nullopt;
    state = after(std::move(state), *bar);
    bars.push_back(std::move(*bar));
  }
  return bars;
}

}  // namespace lamwright
