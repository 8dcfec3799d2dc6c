#include "kernel/nest/bar_search.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright {
namespace {

// Share of a cost that rounding may have added to a bound.
constexpr double kRoundedUp = 1e-9;

// What looking a state up costs, in steps of the pattern lists.
constexpr long kStateSteps = 50;
// What keeping and sorting a pattern costs.
constexpr long kPatternSteps = 20;

using Steps = long;

// Lists patterns by item, most of the longest first.
class PatternLister {
 public:
  struct Given {
    const BarProblem& problem;
    const BarPrices& prices;
    const std::vector<double>& best_ratio;
    const BarState& state;
    const PatternQuery& query;
    std::size_t most_patterns;
  };

  PatternLister(const Given& given, Steps& steps) : given_(given), steps_(steps) {
    const BarKind& kind = given.problem.kinds[given.query.kind];
    price_ = double(kind.cost) + given.prices.bar[given.query.kind];
    needed_ = price_ - given.query.most_lost - kRoundedUp * (price_ + 1);
    room_ = std::min(kind.room, given.query.most_load);
  }

  std::vector<RatedPattern> run() {
    if (given_.query.with) {
      const int first = *given_.query.with;
      if (size(first) <= room_) take(first, 1, 0, 0);
    } else {
      walk(0, 0, 0);
    }
    return std::move(found_);
  }

  bool cut_off() const { return cut_off_; }

 private:
  Whole size(int item) const { return given_.problem.items[item].size; }
  int items() const { return int(given_.problem.items.size()); }

  // Tries `item` from the most that fit down to `least`, each with everything shorter.
  void take(int item, int least, Whole load, double worth) {
    const int most = int(std::min<Whole>(given_.state.demand[item], (room_ - load) / size(item)));
    for (int n = most; n >= least && !cut_off_; --n) {
      if (n > 0) taken_.push_back({item, n});
      walk(item + 1, load + n * size(item), worth + n * given_.prices.item[item]);
      if (n > 0) taken_.pop_back();
    }
  }

  void walk(int item, Whole load, double worth) {
    const int from = item;
    while (item < items() && (given_.state.demand[item] == 0 || size(item) > room_ - load)) ++item;
    steps_ -= 1 + (item - from) / 4;
    if (steps_ <= 0) cut_off_ = true;
    if (cut_off_) return;
    if (item == items()) return keep(load, worth);
    if (worth + double(room_ - load) * given_.best_ratio[item] < needed_) return;
    take(item, 0, load, worth);
  }

  void keep(Whole load, double worth) {
    if (worth < needed_ || taken_.empty()) return;
    if (given_.query.with && !full(load)) return;
    if (found_.size() == given_.most_patterns) {
      cut_off_ = true;
      return;
    }
    steps_ -= kPatternSteps;
    found_.push_back({{given_.query.kind, taken_}, price_ - worth, load});
  }

  // Nothing that is still wanted goes in as well.
  bool full(Whole load) const {
    std::size_t next = taken_.size();
    for (int item = items() - 1; item >= 0 && size(item) <= room_ - load; --item) {
      if (next > 0 && taken_[next - 1].item > item) --next;
      const bool here = next > 0 && taken_[next - 1].item == item;
      if (given_.state.demand[item] > (here ? taken_[next - 1].count : 0)) return false;
    }
    return true;
  }

  Given given_;
  Steps& steps_;
  double price_ = 0, needed_ = 0;
  Whole room_ = 0;
  std::vector<Taken> taken_;
  std::vector<RatedPattern> found_;
  bool cut_off_ = false;
};

bool loses_less(const RatedPattern& a, const RatedPattern& b) {
  return a.lost != b.lost ? a.lost < b.lost : a.load > b.load;
}

}  // namespace

BarSearch::BarSearch(const BarProblem& problem, const BarPrices& prices, const CostSteps& costs)
    : problem_(problem), prices_(prices), costs_(costs) {
  best_ratio_.assign(problem.items.size() + 1, 0);
  for (int i = int(problem.items.size()) - 1; i >= 0; --i)
    best_ratio_[i] = std::max(best_ratio_[i + 1], prices.item[i] / double(problem.items[i].size));
}

Whole BarSearch::least(const BarState& state) const {
  const double bound = prices_.least(state);
  return costs_.not_below(Whole(std::ceil(bound - kRoundedUp * (std::abs(bound) + 1))));
}

std::string BarSearch::key(const BarState& state) const {
  std::string text;
  const auto add = [&text](int n) { text += {char(n & 255), char(n >> 8 & 255), char(n >> 16)}; };
  for (const int n : state.demand) add(n);
  for (std::size_t k = 0; k < state.bars.size(); ++k)
    if (problem_.kinds[k].counted) add(state.bars[k]);
  return text;
}

std::vector<RatedPattern> BarSearch::listed(const BarState& state, const PatternQuery& query) {
  PatternLister lister({problem_, prices_, best_ratio_, state, query, limits_.patterns}, steps_);
  std::vector<RatedPattern> found = lister.run();
  if (lister.cut_off()) ++cuts_;
  return found;
}

std::vector<RatedPattern> BarSearch::patterns(const BarState& state, const PatternQuery& query,
                                              const SearchLimits& limits) {
  limits_ = limits;
  steps_ = limits.steps;
  cuts_ = 0;
  return listed(state, query);
}

bool BarSearch::cheaper_bar_does(const BarState& state, const RatedPattern& option) const {
  for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
    const BarKind& kind = problem_.kinds[k];
    if (!kind.counted && state.bars[k] > 0 && kind.room >= option.load &&
        kind.cost < problem_.kinds[option.pattern.kind].cost)
      return true;
  }
  return false;
}

std::vector<RatedPattern> BarSearch::options(const BarState& state, double most_lost) {
  const auto wanted = std::find_if(state.demand.begin(), state.demand.end(), [](int n) { return n > 0; });
  const int longest = int(wanted - state.demand.begin());
  std::vector<RatedPattern> all;
  for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
    if (state.bars[k] == 0) continue;
    for (RatedPattern& p : listed(state, {int(k), longest, most_lost, problem_.kinds[k].room}))
      if (!cheaper_bar_does(state, p)) all.push_back(std::move(p));
  }
  if (const BarItem& item = problem_.items[longest]; item.left_out != BarItem::kNever)
    all.push_back(
        {{BarPattern::kLeftOut, {{longest, 1}}}, double(item.left_out) - prices_.item[longest], item.size});
  std::stable_sort(all.begin(), all.end(), loses_less);
  return all;
}

bool BarSearch::known_to_fail(const std::string& state, Whole target) const {
  const auto fails = [&](const Failures& failures) {
    const auto known = failures.find(state);
    return known != failures.end() && known->second >= target;
  };
  return fails(refuted_) || fails(tried_);
}

bool BarSearch::cover(const BarState& state, Whole target) {
  if (target < 0) return false;
  if (nothing_left(state)) return true;
  if (least(state) > target) return false;
  const std::string name = key(state);
  if (known_to_fail(name, target)) return false;
  const int cuts_before = cuts_;
  steps_ -= kStateSteps + long(problem_.items.size()) * 4;
  std::vector<RatedPattern> all = options(state, double(target) - prices_.least(state));
  if (all.size() > limits_.width) ++cuts_, all.resize(limits_.width);
  for (const RatedPattern& option : all) {
    if (steps_ <= 0) break;
    steps_ -= kStateSteps;
    chosen_.push_back(option.pattern);
    if (cover(after(state, option.pattern), target - cost(problem_, option.pattern))) return true;
    chosen_.pop_back();
  }
  if (steps_ <= 0) ++cuts_;
  (cuts_ == cuts_before ? refuted_ : tried_).insert_or_assign(name, target);
  return false;
}

std::optional<std::vector<BarPattern>> BarSearch::within(const BarState& state, Whole target,
                                                         const SearchLimits& limits) {
  limits_ = limits;
  steps_ = limits.steps;
  cuts_ = 0;
  chosen_.clear();
  tried_.clear();
  if (cover(state, target)) return chosen_;
  return std::nullopt;
}

}  // namespace lamwright
