#include "kernel/caul/run_kinds.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/caul/run_chain.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr int kMostPieces = 6;  // in a run, unless the longest slats make it more

bool same_width(double a, double b) { return std::abs(a - b) < kSamePoint; }

RunKind kind_of(const ScheduleSpec& spec, const SlatRun& run) {
  const auto joint = run.through  ? RunKind::Joint::none
                     : run.fixing ? RunKind::Joint::on_formers
                                  : RunKind::Joint::free;
  RunKind kind{joint, run.through || run.fixing, {}};
  for (std::size_t i = 0; i < spec.stock.size(); ++i)
    if (same_width(spec.stock[i].width, run.width)) kind.stock.push_back(i);
  return kind;
}

std::vector<double> lengths_of(const ScheduleSpec& spec, const std::vector<std::size_t>& stock) {
  std::vector<double> lengths;
  for (const std::size_t i : stock) lengths.push_back(spec.stock[i].length);
  std::sort(lengths.begin(), lengths.end());
  const auto same = [](double a, double b) { return b - a < kSamePoint; };
  lengths.erase(std::unique(lengths.begin(), lengths.end(), same), lengths.end());
  return lengths;
}

// Never short of them: nothing is better than one length.
bool always_whole(const ScheduleSpec& spec, const RunKind& kind) {
  return std::any_of(kind.stock.begin(), kind.stock.end(), [&](std::size_t i) {
    return !spec.stock[i].count && spec.stock[i].length > spec.length - kSamePoint;
  });
}

int most_pieces(double length, const std::vector<double>& slats) {
  const auto least = [&](double slat) { return static_cast<int>(std::ceil(length / slat - kWholeNumber)); };
  return std::max(least(slats.back()) + 1, std::min(kMostPieces, least(slats.front()) + 1));
}

void list_patterns(const ScheduleSpec& spec, const std::vector<double>& stations, ListedKind& listed) {
  const bool in_one = listed.kind.joint == RunKind::Joint::none || listed.kind.stock.empty();
  if (!in_one && !always_whole(spec, listed.kind)) {
    const auto slats = lengths_of(spec, listed.kind.stock);
    const bool anywhere = listed.kind.joint == RunKind::Joint::free;
    listed.most_pieces = most_pieces(spec.length, slats);
    listed.patterns = joint_patterns(
        {spec.length, spec.bridge, slats, anywhere ? stations : spec.formers, anywhere, listed.most_pieces});
  } else {
    listed.patterns.unlisted = {listed.most_pieces + 1, 0};
  }
}

bool complete(const ListedKind& listed) { return listed.patterns.unlisted.pieces > listed.most_pieces; }

ChoiceStock seen(const ScheduleSpec& spec, std::vector<std::size_t> counted) {
  ChoiceStock stock{{}, std::move(counted)};
  for (const SlatStock& s : spec.stock) stock.lengths.push_back(s.length);
  return stock;
}

std::vector<RunOption> options_of(const ScheduleSpec& spec, const ListedKind& listed,
                                  const ChoiceStock& stock) {
  std::vector<RunOption> options;
  if (!listed.laid) {
    options.push_back({{}, false, slat_choices({}, spec.length, listed.kind, stock)});
    options.front().choices.push_back(left_out(listed.kind, stock));
  }
  for (const Joints& joints : listed.patterns.patterns)
    if (auto choices = slat_choices(joints, spec.length, listed.kind, stock); !choices.empty())
      options.push_back({joints, false, std::move(choices)});
  return options;
}

// Kinds of one width draw on one rack.
void share_racks(const ScheduleSpec& spec, const RunKinds& kinds, const ChoiceStock& stock,
                 ChainSpec& chain) {
  std::vector<double> widths;
  for (const ListedKind& listed : kinds.kinds) {
    const auto found = std::find_if(widths.begin(), widths.end(),
                                    [&](double width) { return same_width(width, listed.width); });
    chain.draws.push_back(
        {static_cast<std::size_t>(found - widths.begin()), listed.kind.joint == RunKind::Joint::none});
    if (found != widths.end()) continue;
    widths.push_back(listed.width);
    chain.racks.push_back(shared_slats(listed.kind, spec.length, stock));
  }
}

struct ListedChain {
  ChainSpec spec;
  bool all = true;  // no option was left out
};

// With `anywhere`, joints of patterns that were left out meet nobody's: a bound, not a schedule.
ListedChain listed_chain(const ScheduleSpec& spec, const RunKinds& kinds, const ChoiceStock& stock,
                         bool anywhere) {
  ListedChain out{{spec.length, {}, kinds.kind_of, {}, {}, {}, spec.bridge}, true};
  for (const ListedKind& listed : kinds.kinds) out.spec.kinds.push_back(options_of(spec, listed, stock));
  drop_beaten(out.spec.kinds, spec.bridge);
  for (std::size_t kind = 0; kind < kinds.kinds.size(); ++kind) {
    const ListedKind& listed = kinds.kinds[kind];
    const bool thinned = thin_out(out.spec.kinds[kind]), all = !thinned && complete(listed);
    out.all = out.all && all;
    const JointGroup unlisted = thinned ? JointGroup{2, 0} : listed.patterns.unlisted;
    if (anywhere && !all)
      out.spec.kinds[kind].push_back(
          joined_anywhere(unlisted, listed.most_pieces, spec.length, listed.kind, stock));
  }
  share_racks(spec, kinds, stock, out.spec);
  for (const std::size_t i : stock.counted) out.spec.counts.push_back(*spec.stock[i].count);
  return out;
}

SolvedRuns picked(const ChainSpec& chain, const RunChain& found) {
  SolvedRuns out{{}, found.proven};
  for (std::size_t run = 0; run < found.links.size(); ++run) {
    const RunOption& option = chain.kinds[chain.kind_of[run]][found.links[run].option];
    out.runs.push_back({option.joints, option.choices[found.links[run].choice]});
  }
  return out;
}

// Stocks of which more is taken than there is.
std::vector<std::size_t> overdrawn(const ScheduleSpec& spec, const SolvedRuns& solved) {
  std::vector<int> used(spec.stock.size(), 0);
  for (const SolvedRun& run : solved.runs)
    for (const std::size_t i : run.choice.stock) ++used[i];
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < used.size(); ++i)
    if (spec.stock[i].count && used[i] > *spec.stock[i].count) out.push_back(i);
  return out;
}

bool same_to_the_cuts(const RunCost& a, const RunCost& b) {
  return std::equal(a.begin(), a.begin() + kWaste, b.begin());
}

// Whether no pattern that was not listed could do better.
bool listed_enough(const ScheduleSpec& spec, const RunKinds& kinds, const ChoiceStock& stock,
                   const RunCost& cost) {
  const RunChain bound = cheapest_chain(listed_chain(spec, kinds, stock, true).spec, Effort::full);
  return bound.proven && same_to_the_cuts(bound.cost, cost);
}

RunKinds with_kept(const RunKinds& kinds, const SolvedRuns& kept) {
  RunKinds out = kinds;
  for (std::size_t run = 0; run < kept.runs.size(); ++run) {
    if (kept.runs[run].choice.stock.empty()) continue;
    ListedKind fixed = kinds.kinds[kinds.kind_of[run]];
    fixed.patterns.patterns = {kept.runs[run].joints};
    fixed.laid = true;
    out.kind_of[run] = out.kinds.size();
    out.kinds.push_back(std::move(fixed));
  }
  return out;
}

}  // namespace

RunKinds run_kinds(const ScheduleSpec& spec) {
  std::vector<std::size_t> every;
  for (std::size_t i = 0; i < spec.stock.size(); ++i) every.push_back(i);
  const auto stations = joint_stations(spec.length, spec.bridge, lengths_of(spec, every), spec.formers);
  RunKinds out;
  for (const SlatRun& run : spec.runs) {
    const RunKind kind = kind_of(spec, run);
    const auto found = std::find_if(out.kinds.begin(), out.kinds.end(), [&](const ListedKind& listed) {
      return listed.kind.joint == kind.joint && same_width(listed.width, run.width);
    });
    out.kind_of.push_back(static_cast<std::size_t>(found - out.kinds.begin()));
    if (found != out.kinds.end()) continue;
    out.kinds.push_back({kind, run.width, 1, {}, false});
    list_patterns(spec, stations, out.kinds.back());
  }
  return out;
}

// Counts make the search long, so only those that the cheapest schedule breaks are brought in, round by
// round.
SolvedRuns solve(const ScheduleSpec& spec, const RunKinds& kinds) {
  std::vector<std::size_t> counted;
  for (Effort effort = Effort::quick;;) {
    const ChoiceStock stock = seen(spec, counted);
    const ListedChain chain = listed_chain(spec, kinds, stock, false);
    const RunChain found = cheapest_chain(chain.spec, effort);
    SolvedRuns solved = picked(chain.spec, found);
    const auto over = overdrawn(spec, solved);
    if (over.empty() && (found.proven || effort == Effort::full)) {
      solved.proven = found.proven && (chain.all || listed_enough(spec, kinds, stock, found.cost));
      return solved;
    }
    effort = over.empty() ? Effort::full : Effort::quick;
    counted.insert(counted.end(), over.begin(), over.end());
    std::sort(counted.begin(), counted.end());
  }
}

SolvedRuns solve_uncounted(const ScheduleSpec& spec, const RunKinds& kinds, const SolvedRuns& kept) {
  const ChainSpec chain = listed_chain(spec, with_kept(kinds, kept), seen(spec, {}), false).spec;
  SolvedRuns solved = picked(chain, cheapest_chain(chain, Effort::full));
  for (std::size_t run = 0; run < kept.runs.size(); ++run)
    if (!kept.runs[run].choice.stock.empty()) solved.runs[run] = kept.runs[run];
  return solved;
}

}  // namespace lamwright
