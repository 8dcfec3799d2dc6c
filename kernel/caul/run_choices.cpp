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

// What is laid beside whom, a bit for each option of all kinds.
using Bits = std::vector<std::uint64_t>;

Bits beside(const RunOption& option, const std::vector<std::vector<RunOption>>& kinds, double bridge) {
  Bits bits;
  std::size_t i = 0;
  for (const auto& kind : kinds)
    for (const RunOption& other : kind) {
      if (i % 64 == 0) bits.push_back(0);
      if (go_together(option, other, bridge)) bits.back() |= std::uint64_t{1} << (i % 64);
      ++i;
    }
  return bits;
}

bool includes(const Bits& all, const Bits& part) {
  for (std::size_t i = 0; i < part.size(); ++i)
    if ((part[i] & ~all[i]) != 0) return false;
  return true;
}

bool replaces(const RunOption& a, const RunOption& b) {
  return std::all_of(b.choices.begin(), b.choices.end(), [&](const SlatChoice& choice) {
    return std::any_of(a.choices.begin(), a.choices.end(),
                       [&](const SlatChoice& other) { return no_worse(other, choice); });
  });
}

bool drop_from(std::vector<RunOption>& options, const std::vector<std::vector<RunOption>>& kinds,
               double bridge) {
  std::vector<Bits> bits;
  for (const RunOption& option : options) bits.push_back(beside(option, kinds, bridge));
  std::vector<bool> dropped(options.size());
  for (std::size_t b = 0; b < options.size(); ++b)
    for (std::size_t a = 0; a < options.size() && !dropped[b]; ++a)
      dropped[b] = a != b && !dropped[a] && includes(bits[a], bits[b]) && replaces(options[a], options[b]);
  std::vector<RunOption> kept;
  for (std::size_t i = 0; i < options.size(); ++i)
    if (!dropped[i]) kept.push_back(options[i]);
  const bool fewer = kept.size() < options.size();
  options = std::move(kept);
  return fewer;
}

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
  for (bool fewer = true; fewer;) {
    fewer = false;
    for (auto& options : kinds) fewer = drop_from(options, kinds, bridge) || fewer;
  }
}

}  // namespace lamwright
