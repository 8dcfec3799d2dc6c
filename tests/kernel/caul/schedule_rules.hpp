// An oracle for caul schedules, written from the rules alone: what a schedule breaks, and the least that one
// can cost.
#pragma once
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "kernel/caul/schedule.hpp"

namespace lamwright::rules {

constexpr double kSlack = 1e-6;  // stations are sums of a few lengths below 1e5: rounding stays below 1e-9

// Runs not made, through and fixing runs among them, fixing runs with joints, pieces, cuts, length of slats
// taken.
using Score = std::array<double, 6>;

inline bool held(const SlatRun& run) { return run.through || run.fixing; }

inline Score score(const ScheduleSpec& spec, const CaulSchedule& schedule) {
  Score sum{};
  for (const ScheduledRun& run : schedule.runs) {
    if (run.pieces.empty()) sum[0] += 1;
    if (run.pieces.empty() && held(run.run)) sum[1] += 1;
    if (run.pieces.size() > 1 && run.run.fixing && !run.run.through) sum[2] += 1;
    for (const SlatPiece& piece : run.pieces) {
      sum[3] += 1;
      if (spec.stock[piece.stock].length - piece.length() > kSlack) sum[4] += 1;
      sum[5] += spec.stock[piece.stock].length;
    }
  }
  return sum;
}

inline std::vector<double> joints(const ScheduledRun& run) {
  std::vector<double> at;
  for (std::size_t i = 1; i < run.pieces.size(); ++i) at.push_back(run.pieces[i].from);
  return at;
}

inline bool on_a_former(const ScheduleSpec& spec, double at) {
  return std::any_of(spec.formers.begin(), spec.formers.end(),
                     [&](double f) { return std::abs(f - at) < kSlack; });
}

inline std::string broken_in_run(const ScheduleSpec& spec, const ScheduledRun& run) {
  double end = 0;
  for (const SlatPiece& piece : run.pieces) {
    const SlatStock& slat = spec.stock.at(piece.stock);
    if (std::abs(piece.from - end) > kSlack) return "a hole or an overlap";
    if (piece.length() > slat.length + kSlack) return "a piece longer than its slat";
    if (piece.cut != (piece.length() < slat.length - kSlack)) return "a cut told wrong";
    if (piece.ripped != (run.run.slat.width() < run.run.width - kSlack)) return "a rip told wrong";
    if (std::abs(slat.width - run.run.width) > kSlack) return "a slat of another width";
    if (run.pieces.size() > 1 && piece.length() < spec.bridge - kSlack)
      return "a piece shorter than the bridge";
    end = piece.to;
  }
  if (std::abs(end - spec.length) > kSlack) return "a run that ends early";
  if (run.run.through && run.pieces.size() > 1) return "a joint in a through run";
  for (const double at : joints(run)) {
    if (at < spec.bridge - kSlack || at > spec.length - spec.bridge + kSlack) return "a joint near the end";
    if (run.run.fixing && !on_a_former(spec, at)) return "a fixing run jointed beside the formers";
  }
  return {};
}

// The first rule that a schedule breaks, or nothing.
inline std::string broken(const ScheduleSpec& spec, const CaulSchedule& schedule) {
  if (schedule.runs.size() != spec.runs.size()) return "runs lost";
  std::vector<int> used(spec.stock.size(), 0);
  int cuts = 0;
  for (std::size_t i = 0; i < schedule.runs.size(); ++i) {
    const ScheduledRun& run = schedule.runs[i];
    if (run.pieces.empty()) continue;
    if (const std::string rule = broken_in_run(spec, run); !rule.empty()) return rule;
    for (const SlatPiece& piece : run.pieces) ++used[piece.stock];
    for (const SlatPiece& piece : run.pieces) cuts += piece.cut ? 1 : 0;
    if (i == 0) continue;
    for (const double a : joints(run))
      for (const double b : joints(schedule.runs[i - 1]))
        if (std::abs(a - b) < spec.bridge - kSlack) return "neighbours jointed at one place";
  }
  for (std::size_t s = 0; s < used.size(); ++s)
    if (spec.stock[s].count && used[s] > *spec.stock[s].count) return "more slats than there are";
  if (used != schedule.used || cuts != schedule.cuts) return "counts told wrong";
  const bool all = std::none_of(schedule.runs.begin(), schedule.runs.end(),
                                [](const ScheduledRun& run) { return run.pieces.empty(); });
  return all == schedule.missing.empty() ? "" : "missing slats told wrong";
}

// The least score by trying everything: every run left out or cut into any number of pieces at any whole mm,
// every piece from any slat that is long enough, run after run. Lengths, bridge and formers must be whole.
class Everything {
 public:
  explicit Everything(const ScheduleSpec& spec) : spec_(spec), used_(spec.stock.size(), 0) {
    next_run(0, {}, {});
  }
  Score least() const { return *least_; }

 private:
  void next_run(std::size_t run, const std::vector<double>& before, const Score& score) {
    if (least_ && !(score < *least_)) return;
    if (run == spec_.runs.size()) {
      least_ = score;
      return;
    }
    add_piece(run, before, {}, 0, score);
    Score without = score;
    without[0] += 1;
    without[1] += held(spec_.runs[run]) ? 1 : 0;
    next_run(run + 1, {}, without);
  }

  bool may_joint(const SlatRun& run, const std::vector<double>& before, double from, double at) const {
    if (run.through || (run.fixing && !on_a_former(spec_, at))) return false;
    if (at - from < spec_.bridge || spec_.length - at < spec_.bridge) return false;
    return std::none_of(before.begin(), before.end(),
                        [&](double b) { return std::abs(b - at) < spec_.bridge; });
  }

  void add_piece(std::size_t run, const std::vector<double>& before, const std::vector<double>& joints,
                 double from, const Score& score) {
    if (least_ && !(score < *least_)) return;
    for (std::size_t s = 0; s < spec_.stock.size(); ++s) {
      if (spec_.stock[s].width != spec_.runs[run].width) continue;
      if (spec_.stock[s].count && used_[s] == *spec_.stock[s].count) continue;
      ++used_[s];
      for (double to = from + 1; to <= std::min(spec_.length, from + spec_.stock[s].length); ++to) {
        if (to < spec_.length && !may_joint(spec_.runs[run], before, from, to)) continue;
        Score with = score;
        with[3] += 1;
        with[4] += to - from < spec_.stock[s].length ? 1 : 0;
        with[5] += spec_.stock[s].length;
        std::vector<double> all = joints;
        if (to < spec_.length) all.push_back(to);
        if (to < spec_.length) {
          add_piece(run, before, all, to, with);
        } else {
          if (!joints.empty() && spec_.runs[run].fixing) with[2] += 1;
          next_run(run + 1, all, with);
        }
      }
      --used_[s];
    }
  }

  const ScheduleSpec& spec_;
  std::vector<int> used_;
  std::optional<Score> least_;
};

}  // namespace lamwright::rules
