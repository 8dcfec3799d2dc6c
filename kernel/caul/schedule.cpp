#include "kernel/caul/schedule.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/caul/run_kinds.hpp"
#include "kernel/caul/schedule_missing.hpp"
#include "kernel/caul/slat_rows.hpp"
#include "shared/error.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

void check(const ScheduleSpec& spec, double gap) {
  ensure(spec.length > 0 && spec.bridge > 0 && gap >= 0, "a caul has a length, a bridge and no negative gap");
  for (const SlatStock& stock : spec.stock)
    ensure(stock.length > 0 && stock.width > 0 && stock.count.value_or(0) >= 0,
           "slats in stock have a length, a width and no negative count");
}

ScheduledRun made(const ScheduleSpec& spec, const SlatRun& run, const Joints& joints,
                  const SlatChoice& choice) {
  ScheduledRun out{run, {}};
  for (std::size_t k = 0; k < choice.stock.size(); ++k) {
    const double from = k == 0 ? 0 : joints[k - 1], to = k == joints.size() ? spec.length : joints[k];
    const std::size_t stock = choice.stock[k];
    out.pieces.push_back({from, to, stock, to - from < spec.stock[stock].length - kSamePoint,
                          run.slat.width() < run.width - kSamePoint});
  }
  return out;
}

void count_up(CaulSchedule& schedule) {
  for (const ScheduledRun& run : schedule.runs)
    for (const SlatPiece& piece : run.pieces) {
      ++schedule.used[piece.stock];
      schedule.cuts += piece.cut ? 1 : 0;
    }
}

}  // namespace

CaulSchedule schedule_caul(const ScheduleSpec& spec, double gap) {
  check(spec, gap);
  const RunKinds kinds = run_kinds(spec);
  const SolvedRuns solved = solve(spec, kinds);
  CaulSchedule schedule;
  schedule.used.assign(spec.stock.size(), 0);
  schedule.proven = solved.proven;
  for (std::size_t i = 0; i < spec.runs.size(); ++i)
    schedule.runs.push_back(made(spec, spec.runs[i], solved.runs[i].joints, solved.runs[i].choice));
  count_up(schedule);
  schedule.missing = missing_slats(spec, kinds, solved);
  const Coverage covers = stock_coverage(spec, kinds, solved, gap);
  schedule.covers_close = covers.close;
  schedule.covers_open = covers.open;
  return schedule;
}

}  // namespace lamwright
