#include "kernel/nest/filling.hpp"

#include <algorithm>

namespace lamwright {
namespace {

// Values that differ by less (relative) are equal: a search for the last bit would never end.
constexpr double kEqualValue = 1e-12;

class Search {
 public:
  explicit Search(const FillingSpec& spec) : spec_(spec), steps_(spec.steps) {
    for (int i = 0; i < int(spec.sizes.size()); ++i)
      if (spec.values[i] > 0 && spec.most[i] > 0 && spec.sizes[i] <= spec.room) order_.push_back(i);
    std::stable_sort(order_.begin(), order_.end(), [this](int a, int b) { return ratio(a) > ratio(b); });
    taken_.assign(order_.size(), 0);
    smallest_.assign(order_.size() + 1, spec.room + 1);
    for (int k = int(order_.size()) - 1; k >= 0; --k)
      smallest_[k] = std::min(smallest_[k + 1], spec.sizes[order_[k]]);
  }

  Filling run() {
    walk(0, spec_.room, 0);
    std::sort(best_.take.begin(), best_.take.end(),
              [](const Taken& a, const Taken& b) { return a.item < b.item; });
    best_.exact = steps_ > 0;
    return best_;
  }

 private:
  double ratio(int item) const { return spec_.values[item] / double(spec_.sizes[item]); }

  void keep(double value) {
    best_.value = value;
    best_.take.clear();
    for (std::size_t k = 0; k < order_.size(); ++k)
      if (taken_[k] > 0) best_.take.push_back({order_[k], taken_[k]});
  }

  bool hopeless(std::size_t k, Whole room, double value) const {
    return value + double(room) * ratio(order_[k]) <= best_.value * (1 + kEqualValue);
  }

  void walk(std::size_t k, Whole room, double value) {
    if (value > best_.value * (1 + kEqualValue)) keep(value);
    if (--steps_ <= 0) return;
    while (k < order_.size() && spec_.sizes[order_[k]] > room) ++k;
    if (k == order_.size() || smallest_[k] > room || hopeless(k, room, value)) return;
    const int item = order_[k];
    const int most = int(std::min<Whole>(spec_.most[item], room / spec_.sizes[item]));
    for (int n = most; n >= 0 && steps_ > 0; --n) {
      taken_[k] = n;
      walk(k + 1, room - n * spec_.sizes[item], value + n * spec_.values[item]);
    }
    taken_[k] = 0;
  }

  const FillingSpec& spec_;
  long steps_;
  std::vector<int> order_;  // dearest for its size first
  std::vector<int> taken_;
  std::vector<Whole> smallest_;  // size from here on
  Filling best_;
};

}  // namespace

Filling best_filling(const FillingSpec& spec) { return Search(spec).run(); }

}  // namespace lamwright
