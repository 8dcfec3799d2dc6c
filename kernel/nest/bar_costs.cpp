#include "kernel/nest/bar_costs.hpp"

#include <algorithm>

namespace lamwright {
namespace {

// Longer sums are nearly all possible, so a longer table would refuse nothing more.
constexpr Whole kTable = 100000;
// As many as this are as good as any number.
constexpr int kManyBars = 30;

}  // namespace

CostSteps::CostSteps(std::vector<BarLength> lengths, int most_bars) : per_length_(most_bars + 1) {
  measure_ = 0;
  for (const BarLength& kind : lengths) measure_ = std::gcd(measure_, kind.length);
  for (BarLength& kind : lengths) kind.length /= measure_;
  const auto shorter = [](const BarLength& a, const BarLength& b) { return a.length < b.length; };
  longest_ = std::max_element(lengths.begin(), lengths.end(), shorter)->length;
  shortest_ = std::min_element(lengths.begin(), lengths.end(), shorter)->length;
  table_.resize(std::min(kTable, longest_ * most_bars) + 1);
  table_[0] = {0, 0};
  for (const BarLength& kind : lengths)
    if (kind.count.value_or(kManyBars) < kManyBars)
      add_up_to(kind.length, *kind.count);
    else
      add_any_number(kind.length);
}

CostSteps::Bars CostSteps::either(const Bars& a, const Bars& b) {
  if (!a.possible()) return b;
  if (!b.possible()) return a;
  return {std::min(a.fewest, b.fewest), std::max(a.most, b.most)};
}

CostSteps::Bars CostSteps::with(const Bars& before, int more) {
  return before.possible() ? Bars{before.fewest + more, before.most + more} : Bars{};
}

void CostSteps::add_any_number(Whole length) {
  for (Whole sum = length; sum < Whole(table_.size()); ++sum)
    table_[sum] = either(table_[sum], with(table_[sum - length], 1));
}

void CostSteps::add_up_to(Whole length, int count) {
  for (Whole sum = Whole(table_.size()) - 1; sum > 0; --sum)
    for (int n = 1; n <= count && n * length <= sum; ++n)
      table_[sum] = either(table_[sum], with(table_[sum - n * length], n));
}

CostSteps::Bars CostSteps::bars_of(Whole length) const {
  if (length < Whole(table_.size())) return table_[length];
  return {int((length + longest_ - 1) / longest_), int(length / shortest_)};
}

Whole CostSteps::not_below(Whole cost) const {
  if (longest_ == 0 || cost <= 0) return std::max<Whole>(cost, 0);
  Whole bars = cost % per_length_;
  for (Whole length = cost / per_length_; length <= longest_ * per_length_; ++length, bars = 0) {
    const Bars possible = bars_of(length);
    if (possible.possible() && bars <= possible.most)
      return length * per_length_ + std::max<Whole>(bars, possible.fewest);
  }
  return cost;
}

Whole CostSteps::below(Whole cost) const {
  if (longest_ == 0) return cost - 1;
  Whole length = cost / per_length_;
  if (const Bars here = bars_of(length); here.possible() && cost % per_length_ > here.fewest)
    return std::min(cost - 1, length * per_length_ + here.most);
  while (--length >= 0)
    if (const Bars here = bars_of(length); here.possible()) return length * per_length_ + here.most;
  return -1;
}

}  // namespace lamwright
