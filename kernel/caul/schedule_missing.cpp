#include "kernel/caul/schedule_missing.hpp"

#include <algorithm>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

bool made(const SolvedRun& run) { return !run.choice.stock.empty(); }

std::vector<int> slats_of(const SolvedRuns& solved, std::size_t stocks) {
  std::vector<int> used(stocks, 0);
  for (const SolvedRun& run : solved.runs)
    for (const std::size_t i : run.choice.stock) ++used[i];
  return used;
}

long left_out_of(const RunKinds& kinds, std::size_t kind, const SolvedRuns& solved) {
  long n = 0;
  for (std::size_t run = 0; run < solved.runs.size(); ++run)
    if (kinds.kind_of[run] == kind && !made(solved.runs[run])) ++n;
  return n;
}

double longest(const ScheduleSpec& spec, const RunKind& kind) {
  double most = 0;
  for (const std::size_t i : kind.stock) most = std::max(most, spec.stock[i].length);
  return most;
}

// Why runs of a kind cannot be made however many slats there are.
std::string out_of_reach(const ScheduleSpec& spec, const ListedKind& listed, long n) {
  const std::string width = number(listed.width), length = number(spec.length);
  if (listed.kind.stock.empty())
    return "No slats " + width + " wide are in stock: " + counted(n, "run") + (n == 1 ? " needs" : " need") +
           " them.";
  const std::string reach = number(longest(spec, listed.kind));
  if (listed.kind.joint == RunKind::Joint::none)
    return "No slat " + width + " wide reaches " + length + " for a through slat: the longest in stock is " +
           reach + "; " + number(n) + (n == 1 ? " is" : " are") + " needed.";
  if (listed.kind.joint == RunKind::Joint::on_formers)
    return "No slat " + width + " wide reaches " + length + " for a fixing slat, and none up to " + reach +
           " can be jointed on the formers clear of the joints beside it; " + number(n) +
           (n == 1 ? " is" : " are") + " needed.";
  return counted(n, "run") + " of slats up to " + reach + " x " + width + " cannot be jointed " +
         number(spec.bridge) + " clear of the ends and of the joints beside.";
}

// Runs that no number of slats could make.
std::ptrdiff_t runs_out_of_reach(const ScheduleSpec& spec, const RunKinds& kinds) {
  return std::count_if(kinds.kind_of.begin(), kinds.kind_of.end(), [&](std::size_t kind) {
    const ListedKind& listed = kinds.kinds[kind];
    return longest(spec, listed.kind) < spec.length - kSamePoint && listed.patterns.patterns.empty();
  });
}

// Every run that slats could make, made: beside those that are if that goes, else all anew.
SolvedRuns completed(const ScheduleSpec& spec, const RunKinds& kinds, const SolvedRuns& solved) {
  const auto open = [](const SolvedRuns& runs) {
    return std::count_if(runs.runs.begin(), runs.runs.end(), [](const SolvedRun& run) { return !made(run); });
  };
  if (open(solved) == runs_out_of_reach(spec, kinds)) return solved;
  SolvedRuns beside = solve_uncounted(spec, kinds, solved);
  SolvedRuns anew = solve_uncounted(spec, kinds, {});
  return open(beside) <= open(anew) ? beside : anew;
}

}  // namespace

std::vector<std::string> missing_slats(const ScheduleSpec& spec, const RunKinds& kinds,
                                       const SolvedRuns& solved) {
  if (std::all_of(solved.runs.begin(), solved.runs.end(), made)) return {};
  const SolvedRuns whole = completed(spec, kinds, solved);
  std::vector<std::string> out;
  for (std::size_t kind = 0; kind < kinds.kinds.size(); ++kind)
    if (const long n = left_out_of(kinds, kind, whole); n > 0)
      out.push_back(out_of_reach(spec, kinds.kinds[kind], n));
  const std::vector<int> wanted = slats_of(whole, spec.stock.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const long n = spec.stock[i].count ? wanted[i] - *spec.stock[i].count : 0;
    if (n > 0)
      out.push_back(counted(n, "slat") + " of " + number(spec.stock[i].length) + " x " +
                    number(spec.stock[i].width) + (n == 1 ? " is missing." : " are missing."));
  }
  return out;
}

}  // namespace lamwright
