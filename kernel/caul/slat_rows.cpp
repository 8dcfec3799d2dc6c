#include "kernel/caul/slat_rows.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "kernel/caul/run_chain.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr double kMostRows = 400;

ChoiceStock all_counted(const ScheduleSpec& spec) {
  ChoiceStock stock;
  for (std::size_t i = 0; i < spec.stock.size(); ++i) {
    stock.lengths.push_back(spec.stock[i].length);
    if (spec.stock[i].count) stock.counted.push_back(i);
  }
  return stock;
}

std::vector<int> counts_of(const ScheduleSpec& spec, const ChoiceStock& stock) {
  std::vector<int> counts;
  for (const std::size_t i : stock.counted) counts.push_back(*spec.stock[i].count);
  return counts;
}

bool stagger_among_themselves(const std::vector<Joints>& ways, double bridge) {
  for (const Joints& a : ways)
    for (const Joints& b : ways)
      if (staggered(a, b, bridge)) return true;
  return false;
}

// Handfuls of slats that make a row of one kind of run.
std::vector<SlatChoice> handfuls(const ScheduleSpec& spec, const ListedKind& listed,
                                 const ChoiceStock& stock) {
  struct Ways {
    SlatChoice cheapest;
    std::vector<Joints> joints;
  };
  std::map<std::vector<int>, Ways> all;
  const auto add = [&](const Joints& joints) {
    for (const SlatChoice& choice : slat_choices(joints, spec.length, listed.kind, stock))
      all.try_emplace(choice.use, Ways{choice, {}}).first->second.joints.push_back(joints);
  };
  add({});
  std::for_each(listed.patterns.patterns.begin(), listed.patterns.patterns.end(), add);
  std::vector<SlatChoice> out;
  for (const auto& [use, ways] : all)
    if (stagger_among_themselves(ways.joints, spec.bridge)) out.push_back(ways.cheapest);
  return out;
}

bool uncounted(const SlatChoice& choice) {
  return std::all_of(choice.use.begin(), choice.use.end(), [](int n) { return n == 0; });
}

// The most rows that handfuls fill at once, none of them of uncounted slats alone.
int most_rows(const ScheduleSpec& spec, const ListedKind& listed, const ChoiceStock& stock,
              const std::vector<SlatChoice>& choices) {
  ChainSpec chain{spec.length, {{{{}, true, choices}}}, {}, counts_of(spec, stock), {{}}, {{0, false}},
                  spec.bridge};
  chain.kinds[0][0].choices.push_back(left_out(listed.kind, stock));
  chain.racks[0] = shared_slats(listed.kind, spec.length, stock);
  // Every row takes a counted slat, and no more rows than these could be filled end to end.
  int slats = 0;
  for (const SharedSlats& shared : chain.racks[0]) slats += shared.count ? chain.counts[*shared.count] : 0;
  const int rows = static_cast<int>(std::min<double>(kMostRows, slats));
  chain.kind_of.assign(static_cast<std::size_t>(rows), 0);
  return rows - static_cast<int>(cheapest_chain(chain, Effort::quick).cost[kUnmade]);
}

// The kind of a width whose runs may be jointed most freely.
std::vector<const ListedKind*> freest(const RunKinds& kinds) {
  std::vector<const ListedKind*> out;
  for (const ListedKind& listed : kinds.kinds) {
    const auto same = std::find_if(out.begin(), out.end(), [&](const ListedKind* other) {
      return std::abs(other->width - listed.width) < kSamePoint;
    });
    if (same == out.end())
      out.push_back(&listed);
    else if ((*same)->kind.joint < listed.kind.joint)
      *same = &listed;
  }
  return out;
}

// A caul that is made whole shows how many rows the stock fills.
int rows_made(const RunKinds& kinds, const SolvedRuns& solved, double width) {
  int rows = 0;
  for (std::size_t run = 0; run < solved.runs.size(); ++run) {
    if (solved.runs[run].choice.stock.empty()) return 0;
    if (std::abs(kinds.kinds[kinds.kind_of[run]].width - width) < kSamePoint) ++rows;
  }
  return rows;
}

}  // namespace

Coverage stock_coverage(const ScheduleSpec& spec, const RunKinds& kinds, const SolvedRuns& solved,
                        double gap) {
  const ChoiceStock stock = all_counted(spec);
  Coverage covers;
  int all_rows = 0;
  for (const ListedKind* listed : freest(kinds)) {
    const auto choices = handfuls(spec, *listed, stock);
    if (std::any_of(choices.begin(), choices.end(), uncounted)) return {INFINITY, INFINITY};
    const int rows =
        std::max(most_rows(spec, *listed, stock, choices), rows_made(kinds, solved, listed->width));
    covers.close += rows * listed->width;
    all_rows += rows;
  }
  covers.open = covers.close + std::max(0, all_rows - 1) * gap;
  return covers;
}

}  // namespace lamwright
