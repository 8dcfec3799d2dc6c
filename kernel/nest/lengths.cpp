#include "kernel/nest/lengths.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/nest/bar_solver.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// A hundred pieces in one bar then round by half the tolerance of a fit.
constexpr double kUnit = kSamePoint / 100;
// Costs are whole too; a bar's length need not be known better than the tolerance.
constexpr double kCostUnit = kSamePoint;

Whole units(double length) { return std::llround(length / kUnit); }
Whole cost_units(double length) { return std::llround(length / kCostUnit); }

void check_input(const std::vector<WantedLength>& wanted, const std::vector<StockLength>& stock,
                 double kerf) {
  if (!(kerf >= 0)) throw geometry_error("kerf", "it is " + number(kerf), "0 or more is needed");
  for (const WantedLength& w : wanted) {
    if (!(w.length > 0))
      throw geometry_error(w.name, "its length is " + number(w.length), "above 0 is needed");
    if (w.count < 0)
      throw geometry_error(w.name, "its count is " + std::to_string(w.count), "0 or more is needed");
  }
  for (const StockLength& s : stock)
    if (!(s.length > 0) || s.count.value_or(0) < 0)
      throw geometry_error("stock", "a length of " + number(s.length) + " or its count is below what can be",
                           "lengths above 0 and counts of 0 or more are needed");
}

// Wanted lengths that are one and the same to a saw.
struct Same {
  double length = 0;
  std::vector<std::size_t> wanted;
  int count = 0;
};

std::vector<Same> merged(const std::vector<WantedLength>& wanted) {
  std::vector<std::size_t> order(wanted.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return wanted[a].length > wanted[b].length; });
  std::vector<Same> all;
  for (const std::size_t w : order) {
    if (wanted[w].count == 0) continue;
    if (all.empty() || all.back().length - wanted[w].length > kSamePoint)
      all.push_back({wanted[w].length, {}, 0});
    all.back().wanted.push_back(w);
    all.back().count += wanted[w].count;
  }
  return all;
}

class Cutter {
 public:
  Cutter(const std::vector<WantedLength>& wanted, std::vector<StockLength> stock, double kerf)
      : wanted_(wanted), stock_(std::move(stock)), kerf_(kerf) {
    std::erase_if(stock_, [](const StockLength& s) { return s.count == 0; });
    std::stable_sort(stock_.begin(), stock_.end(),
                     [](const StockLength& a, const StockLength& b) { return a.length > b.length; });
    for (const Same& same : merged(wanted)) {
      if (stock_.empty() || same.length > stock_.front().length + kSamePoint) continue;
      items_.push_back(same);
      pieces_ += same.count;
    }
  }

  LengthPlan run() {
    left_.resize(wanted_.size());
    plan_.missing.resize(wanted_.size());
    for (std::size_t w = 0; w < wanted_.size(); ++w) left_[w] = wanted_[w].count;
    if (!items_.empty()) solve();
    plan_.missing = left_;
    order_bars();
    return plan_;
  }

 private:
  // Bars cost their length; all pieces must be cut.
  BarProblem problem(const CostSteps& costs) const {
    BarProblem p;
    for (const Same& same : items_)
      p.items.push_back({units(same.length + kerf_), same.count, BarItem::kNever});
    for (const StockLength& s : stock_) {
      const bool counted = s.count && *s.count < pieces_;
      p.kinds.push_back({units(s.length + kerf_ + kSamePoint), costs.cost_of(cost_units(s.length)),
                         counted ? *s.count : pieces_, counted});
    }
    return p;
  }

  CostSteps costs() const {
    std::vector<BarLength> lengths;
    for (const StockLength& s : stock_) lengths.push_back({cost_units(s.length), s.count});
    return CostSteps(lengths, pieces_);
  }

  // Bars cost nothing and a piece left out its length.
  BarTask most_cut(BarProblem p) const {
    std::vector<Whole> lengths;
    for (const Same& same : items_) lengths.push_back(cost_units(same.length));
    Whole measure = 0;
    for (const Whole length : lengths) measure = std::gcd(measure, length);
    for (std::size_t i = 0; i < p.items.size(); ++i) p.items[i].left_out = lengths[i] / measure;
    for (BarKind& kind : p.kinds) kind.cost = 0;
    return {std::move(p), CostSteps(), {}, std::nullopt};
  }

  void solve() {
    const CostSteps steps = costs();
    BarTask task{problem(steps), steps, {}, units(kerf_ + kSamePoint)};
    if (may_run_out()) leave_out(task);
    const std::optional<BarCutting> cutting = cheapest_cutting(task);
    ensure(cutting.has_value(), "a cutting is found where one is known");
    keep(task, *cutting);
  }

  // Some pieces fit counted bars only.
  bool may_run_out() const {
    double longest_bought = 0;
    for (const StockLength& s : stock_)
      if (!s.count || *s.count >= pieces_) longest_bought = std::max(longest_bought, s.length);
    return items_.front().length > longest_bought + kSamePoint;
  }

  void leave_out(BarTask& task) {
    const BarTask most = most_cut(task.problem);
    const BarCutting cutting = *cheapest_cutting(most);
    plan_.proven = cost(most.problem, cutting.bars) <= cutting.bound;
    for (const BarPattern& bar : cutting.bars)
      if (bar.kind != BarPattern::kLeftOut)
        task.known.push_back(bar);
      else
        for (const Taken& t : bar.take) task.problem.items[t.item].count -= t.count;
  }

  void keep(const BarTask& task, const BarCutting& cutting) {
    for (const BarPattern& bar : cutting.bars) keep_bar(bar);
    const Whole cost_of_bars = cost(task.problem, cutting.bars);
    const double least = double(task.costs.length_of(cutting.bound)) * kCostUnit;
    plan_.proven = plan_.proven && task.costs.length_of(cost_of_bars) <= task.costs.length_of(cutting.bound);
    plan_.bound = plan_.proven ? plan_.bought : std::min(least, plan_.bought);
  }

  void keep_bar(const BarPattern& pattern) {
    CutBar bar{stock_[pattern.kind].length, {}, 0};
    double used = 0;
    for (const Taken& t : pattern.take)
      for (int n = 0; n < t.count; ++n) {
        bar.pieces.push_back(next_of(items_[t.item]));
        used += wanted_[bar.pieces.back()].length + (bar.pieces.size() > 1 ? kerf_ : 0);
      }
    const double remains = bar.stock - used;
    bar.rest = remains <= kSamePoint ? 0 : std::max(0.0, remains - kerf_);
    plan_.bought += bar.stock;
    plan_.bars.push_back(std::move(bar));
  }

  std::size_t next_of(const Same& same) {
    const auto w =
        std::find_if(same.wanted.begin(), same.wanted.end(), [this](auto i) { return left_[i] > 0; });
    ensure(w != same.wanted.end(), "no more pieces are cut than are wanted");
    --left_[*w];
    return *w;
  }

  void order_bars() {
    std::stable_sort(plan_.bars.begin(), plan_.bars.end(), [](const CutBar& a, const CutBar& b) {
      if (a.stock != b.stock) return a.stock > b.stock;
      return a.pieces < b.pieces;
    });
  }

  const std::vector<WantedLength>& wanted_;
  std::vector<StockLength> stock_;
  double kerf_;
  std::vector<Same> items_;  // that fit the longest stock
  int pieces_ = 0;
  std::vector<int> left_;  // of each wanted length, still to be given to a bar
  LengthPlan plan_;
};

}  // namespace

LengthPlan cut_lengths(const std::vector<WantedLength>& wanted, const std::vector<StockLength>& stock,
                       double kerf) {
  check_input(wanted, stock, kerf);
  return Cutter(wanted, stock, kerf).run();
}

}  // namespace lamwright
