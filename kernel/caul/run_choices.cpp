#include "kernel/caul/run_choices.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostChoices = 1500, kLeastOfHandful = 8;
constexpr double kMostHandfuls = 10'000;

std::vector<int> nothing_used(const ChoiceStock& stock) { return std::vector<int>(stock.counted.size(), 0); }

std::ptrdiff_t counted_as(const ChoiceStock& stock, std::size_t i) {
  const auto found = std::find(stock.counted.begin(), stock.counted.end(), i);
  return found == stock.counted.end() ? -1 : found - stock.counted.begin();
}

SlatChoice with_piece(SlatChoice choice, double piece, std::size_t i, const ChoiceStock& stock) {
  const double waste = std::max(0.0, stock.lengths[i] - piece);
  choice.cost[kPieces] += 1;
  choice.cost[kCuts] += waste > kSamePoint ? 1 : 0;
  choice.cost[kWaste] += std::llround(waste * 1000);
  choice.stock.push_back(i);
  if (const auto counted = counted_as(stock, i); counted >= 0)
    ++choice.use[static_cast<std::size_t>(counted)];
  return choice;
}

// Cheapest first, beaten ones left out.
void keep_best(std::vector<SlatChoice>& choices) {
  std::stable_sort(choices.begin(), choices.end(),
                   [](const SlatChoice& a, const SlatChoice& b) { return a.cost < b.cost; });
  std::vector<SlatChoice> kept;
  for (SlatChoice& choice : choices)
    if (std::none_of(kept.begin(), kept.end(), [&](const SlatChoice& k) { return no_worse(k, choice); }))
      kept.push_back(std::move(choice));
  choices = std::move(kept);
}

// What a piece may be cut from: every counted slat that is long enough, of the others the shortest.
std::vector<std::size_t> sources(double piece, const RunKind& kind, const ChoiceStock& stock) {
  std::vector<std::size_t> out;
  std::ptrdiff_t shortest = -1;
  for (const std::size_t i : kind.stock) {
    if (stock.lengths[i] < piece - kSamePoint) continue;
    if (counted_as(stock, i) >= 0) {
      out.push_back(i);
    } else if (shortest < 0 || stock.lengths[i] < stock.lengths[static_cast<std::size_t>(shortest)]) {
      shortest = static_cast<std::ptrdiff_t>(i);
    }
  }
  if (shortest >= 0) out.push_back(static_cast<std::size_t>(shortest));
  return out;
}

// How many handfuls of so many slats there are.
double handful_count(int pieces, std::size_t stocks) {
  double count = 1;
  for (int k = 1; k <= pieces; ++k) count *= (static_cast<double>(stocks) + k - 1) / k;
  return count;
}

// Choices of so many slats, long enough together; their pieces are not laid out.
std::vector<SlatChoice> handfuls(int pieces, const RunKind& kind, const ChoiceStock& stock) {
  std::vector<SlatChoice> all{{{}, nothing_used(stock), {}}};
  for (int k = 0; k < pieces; ++k) {
    std::vector<SlatChoice> next;
    for (const SlatChoice& choice : all)
      for (const std::size_t i : kind.stock)
        if (choice.stock.empty() || choice.stock.back() <= i)
          next.push_back(with_piece(choice, stock.lengths[i], i, stock));
    all = std::move(next);
  }
  return all;
}

// Costs no more than any handful of at least so many slats.
SlatChoice from_nowhere(JointGroup least, const ChoiceStock& stock) {
  SlatChoice choice{{}, nothing_used(stock), {}};
  choice.cost[kPieces] = least.pieces;
  return choice;
}

double reach(const SlatChoice& choice, const ChoiceStock& stock) {
  double sum = 0;
  for (const std::size_t i : choice.stock) sum += stock.lengths[i];
  return sum;
}

// At most so many of the numbers below n: half of them the first, half spread over the rest, the last among
// them.
std::vector<std::size_t> spread(std::size_t n, std::size_t most) {
  std::vector<std::size_t> out;
  const std::size_t first = n <= most ? n : most / 2, rest = n - first;
  for (std::size_t i = 0; i < first; ++i) out.push_back(i);
  for (std::size_t i = 1; rest > 0 && i <= most - first; ++i)
    out.push_back(first + i * rest / (most - first) - 1);
  return out;
}

// A bit for each option of all kinds.
using Bits = std::vector<std::uint64_t>;

void set(Bits& bits, std::size_t i) { bits[i / 64] |= std::uint64_t{1} << (i % 64); }
void clear(Bits& bits, std::size_t i) { bits[i / 64] &= ~(std::uint64_t{1} << (i % 64)); }

// Who may lie beside each.
std::vector<Bits> neighbours(const std::vector<const RunOption*>& options, double bridge) {
  std::vector<Bits> out(options.size(), Bits((options.size() + 63) / 64));
  for (std::size_t a = 0; a < options.size(); ++a)
    for (std::size_t b = 0; b <= a; ++b)
      if (go_together(*options[a], *options[b], bridge)) {
        set(out[a], b);
        set(out[b], a);
      }
  return out;
}

// All of `part` that is still there.
bool includes(const Bits& all, const Bits& part, const Bits& there) {
  for (std::size_t i = 0; i < part.size(); ++i)
    if ((part[i] & there[i] & ~all[i]) != 0) return false;
  return true;
}

bool replaces(const RunOption& a, const RunOption& b) {
  return std::all_of(b.choices.begin(), b.choices.end(), [&](const SlatChoice& choice) {
    return std::any_of(a.choices.begin(), a.choices.end(),
                       [&](const SlatChoice& other) { return no_worse(other, choice); });
  });
}

// The options of all kinds in a row, and which are still there.
class Dropping {
 public:
  Dropping(const std::vector<std::vector<RunOption>>& kinds, double bridge) {
    for (const auto& kind : kinds)
      for (const RunOption& option : kind) options_.push_back(&option);
    beside_ = neighbours(options_, bridge);
    there_.assign((options_.size() + 63) / 64, 0);
    for (std::size_t i = 0; i < options_.size(); ++i) set(there_, i);
  }

  bool there(std::size_t i) const { return (there_[i / 64] >> (i % 64) & 1) != 0; }

  // Among options [first, last); whether there are fewer now.
  bool drop(std::size_t first, std::size_t last) {
    Bits left = there_;
    for (std::size_t b = first; b < last; ++b)
      if (there(b) && beaten(b, first, last, left)) clear(left, b);
    const bool fewer = left != there_;
    there_ = std::move(left);
    return fewer;
  }

 private:
  bool beaten(std::size_t b, std::size_t first, std::size_t last, const Bits& left) const {
    for (std::size_t a = first; a < last; ++a)
      if (a != b && (left[a / 64] >> (a % 64) & 1) != 0 && includes(beside_[a], beside_[b], there_) &&
          replaces(*options_[a], *options_[b]))
        return true;
    return false;
  }

  std::vector<const RunOption*> options_;
  std::vector<Bits> beside_;
  Bits there_;
};

}  // namespace

RunCost operator+(const RunCost& a, const RunCost& b) {
  RunCost sum;
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] = a[i] + b[i];
  return sum;
}

std::vector<SlatChoice> slat_choices(const Joints& joints, double length, const RunKind& kind,
                                     const ChoiceStock& stock) {
  std::vector<SlatChoice> all{{{}, nothing_used(stock), {}}};
  for (std::size_t k = 0; k <= joints.size(); ++k) {
    const double from = k == 0 ? 0 : joints[k - 1], to = k == joints.size() ? length : joints[k];
    std::vector<SlatChoice> next;
    for (const SlatChoice& choice : all)
      for (const std::size_t i : sources(to - from, kind, stock))
        next.push_back(with_piece(choice, to - from, i, stock));
    keep_best(next);
    all = std::move(next);
  }
  const auto off = std::count_if(joints.begin(), joints.end(),
                                 [](double s) { return std::abs(s - std::round(s)) > kSamePoint; });
  for (SlatChoice& choice : all) {
    choice.cost[kOffWhole] = off;
    choice.cost[kJointedFixings] = kind.joint == RunKind::Joint::on_formers && !joints.empty() ? 1 : 0;
  }
  return all;
}

SlatChoice left_out(const RunKind& kind, const ChoiceStock& stock) {
  SlatChoice none{{}, nothing_used(stock), {}};
  none.cost[kUnmade] = 1;
  none.cost[kUnmadeHeld] = kind.held ? 1 : 0;
  return none;
}

RunOption joined_anywhere(JointGroup least, int most_pieces, double length, const RunKind& kind,
                          const ChoiceStock& stock) {
  RunOption option{{}, true, {}};
  double count = 0;
  for (int pieces = least.pieces; pieces <= most_pieces + 1; ++pieces)
    count += handful_count(pieces, kind.stock.size());
  if (count > kMostHandfuls) {
    option.choices.push_back(from_nowhere(least, stock));
    return option;
  }
  for (int pieces = least.pieces; pieces <= most_pieces + 1; ++pieces)
    for (SlatChoice choice : handfuls(pieces, kind, stock)) {
      // A run of still more pieces holds a handful of these, long enough or not.
      if (pieces <= most_pieces && reach(choice, stock) < length - kSamePoint) continue;
      choice.cost[kCuts] = pieces == least.pieces ? least.cuts : 0;
      choice.cost[kJointedFixings] = kind.joint == RunKind::Joint::on_formers ? 1 : 0;
      option.choices.push_back(std::move(choice));
    }
  keep_best(option.choices);
  return option;
}

bool no_worse(const SlatChoice& a, const SlatChoice& b) {
  if (b.cost < a.cost) return false;
  for (std::size_t i = 0; i < a.use.size(); ++i)
    if (a.use[i] > b.use[i]) return false;
  return true;
}

bool go_together(const RunOption& a, const RunOption& b, double bridge) {
  return a.anywhere || b.anywhere || staggered(a.joints, b.joints, bridge);
}

bool thin_out(std::vector<RunOption>& options) {
  std::map<std::vector<std::size_t>, std::vector<std::pair<std::size_t, std::size_t>>> handfuls;
  std::size_t all = 0;
  for (std::size_t o = 0; o < options.size(); ++o)
    for (std::size_t c = 0; c < options[o].choices.size(); ++c, ++all) {
      std::vector<std::size_t> slats = options[o].choices[c].stock;
      std::sort(slats.begin(), slats.end());
      handfuls[slats].push_back({o, c});
    }
  if (all <= kMostChoices) return false;
  const std::size_t each = std::max<std::size_t>(kLeastOfHandful, kMostChoices / handfuls.size());
  std::vector<std::vector<SlatChoice>> kept(options.size());
  for (const auto& [slats, places] : handfuls)
    for (const std::size_t i : spread(places.size(), each))
      kept[places[i].first].push_back(options[places[i].first].choices[places[i].second]);
  for (std::size_t o = 0; o < options.size(); ++o) {
    keep_best(kept[o]);
    options[o].choices = std::move(kept[o]);
  }
  std::erase_if(options, [](const RunOption& option) { return option.choices.empty(); });
  return true;
}

void drop_beaten(std::vector<std::vector<RunOption>>& kinds, double bridge) {
  Dropping dropping(kinds, bridge);
  for (bool fewer = true; fewer;) {
    fewer = false;
    std::size_t first = 0;
    for (const auto& kind : kinds) {
      fewer = dropping.drop(first, first + kind.size()) || fewer;
      first += kind.size();
    }
  }
  std::vector<std::vector<RunOption>> kept(kinds.size());
  std::size_t i = 0;
  for (std::size_t kind = 0; kind < kinds.size(); ++kind)
    for (RunOption& option : kinds[kind])
      if (dropping.there(i++)) kept[kind].push_back(std::move(option));
  kinds = std::move(kept);
}

}  // namespace lamwright
