#include "kernel/profile/fit/refine.hpp"

#include <algorithm>
#include <cmath>

#include "shared/units.hpp"

namespace lamwright::fitting {
namespace {

using Eigen::Vector4d;

constexpr double kLeastLength = 1e-3;  // mm, as points that are one; a run that short has shrunk away
constexpr double kLeastShare = 0.3;    // of its length that a run keeps in one round
constexpr double kFullTurn = 355 * kPi / 180;
constexpr double kMet = 1e-11;       // mm and radians by which a known end may be missed
constexpr double kRounding = 1e-10;  // mm; squares of residuals as small are rounding
constexpr double kEndCost = 1e-6;    // share by which the squares may rise as the last miss is taken away
constexpr double kGiveUp = 1e9;      // damping at which no smaller step helps

// What a known end asks: values that have to vanish and their slopes on the last run.
struct Condition {
  double value;
  Vector4d slope;
};

std::vector<Condition> conditions(const Path& path, const Ties& ties) {
  if (!ties.end) return {};
  const Pose from = joints(path)[path.runs.size() - 1];
  const double k = path.runs.back().curvature;
  const Seen point = seen_from(from, from.tangent(), ties.end->point);
  const Distance distance = distance_and_slope(point, k);
  std::vector<Condition> out{{distance.value, distance.slope}};
  if (!ties.end->heading) return out;
  const double across = 1 + k * point.left, along = k * point.ahead;
  const double q = across * across + along * along;
  const double heading = from.heading - std::atan2(along, across) - *ties.end->heading;
  // Slopes of atan2(k ahead, 1 + k left).
  const double by_ahead = k * across / q, by_left = -k * along / q;
  out.push_back({std::remainder(heading, 2 * kPi),
                 {by_ahead, by_left, 1 - by_ahead * point.left + by_left * point.ahead, -point.ahead / q}});
  return out;
}

Step sum(Step a, const Step& b, double times) {
  a.offset += times * b.offset;
  a.heading += times * b.heading;
  for (std::size_t i = 0; i < a.length.size(); ++i) {
    a.curvature[i] += times * b.curvature[i];
    a.length[i] += times * b.length[i];
  }
  return a;
}

// The step of least squares that meets the conditions to first order.
Step conditioned(const ChainSolver& solver, const Blocks& blocks, const std::vector<Condition>& asked) {
  std::vector<Vector4d> g;
  for (const RunBlock& block : blocks.runs) g.push_back(block.g);
  Step step = solver.solve(g);
  if (asked.empty()) return step;
  const auto count = static_cast<Eigen::Index>(asked.size());
  std::vector<Step> answers;
  Eigen::MatrixXd m(count, count);
  Eigen::VectorXd missing(count);
  for (Eigen::Index j = 0; j < count; ++j) {
    std::vector<Vector4d> unit(blocks.runs.size(), Vector4d::Zero());
    unit.back() = -asked[j].slope;
    answers.push_back(solver.solve(unit));
    for (Eigen::Index i = 0; i < count; ++i) m(i, j) = asked[i].slope.dot(solver.at_last(answers[j]));
    missing[j] = -asked[j].value - asked[j].slope.dot(solver.at_last(step));
  }
  const Eigen::VectorXd pull = m.fullPivLu().solve(missing);
  for (Eigen::Index j = 0; j < count; ++j) step = sum(step, answers[j], pull[j]);
  return step;
}

// The turn of a run follows the step exactly, and curvature what turn and length make it: a product of the
// two changes left in the turn would swing all that follows.
Run changed(const Run& run, double by_curvature, double by_length) {
  const double least = std::max(kLeastShare * run.length, kLeastLength / 10);
  const double length = std::max(run.length + by_length, least);
  return {length, (run.turn() + run.length * by_curvature + run.curvature * by_length) / length};
}

Path moved(const Path& path, const Step& step) {
  Path out = path;
  out.start.point += step.offset * path.start.normal();
  out.start.heading += step.heading;
  for (std::size_t i = 0; i < out.runs.size(); ++i)
    out.runs[i] = changed(path.runs[i], step.curvature[i], step.length[i]);
  return out;
}

double merit(const Blocks& blocks, const std::vector<Condition>& asked) {
  double out = blocks.squares;
  for (const Condition& c : asked) {
    // A heading counts by what it moves at the reach of the slope.
    const double reach = std::max(1.0, c.slope.tail<1>().norm());
    out += 100 * blocks.weight * c.value * c.value * reach;
  }
  return out;
}

double missed(const std::vector<Condition>& asked) {
  double out = 0;
  for (const Condition& c : asked) out = std::max(out, std::abs(c.value));
  return out;
}

// The last run ends abreast of the last sample.
void cut_last(Refined& fit, const Vec2& last) {
  const Pose from = joints(fit.path)[fit.path.runs.size() - 1];
  Run& run = fit.path.runs.back();
  run.length = station_on(seen_from(from, from.tangent(), last), run);
}

// No run has shrunk away or turns round, and the first sample lies on the first.
bool sound(const Path& path, const Vec2& first) {
  const Seen seen = seen_from(path.start, path.start.tangent(), first);
  if (station_on(seen, path.runs.front()) > path.runs.front().length - kLeastLength) return false;
  return std::all_of(path.runs.begin(), path.runs.end(), [](const Run& run) {
    return run.length > kLeastLength && std::abs(run.turn()) < kFullTurn;
  });
}

}  // namespace

Refined refined(const Path& start, const std::vector<Sample>& samples, const Ties& ties,
                const std::vector<bool>& straight, const Effort& effort) {
  Refined best{start, blocks_of(start, samples)};
  std::vector<Condition> asked = conditions(start, ties);
  Freedom freedom = ties.freedom();
  freedom.straight = straight;
  double damping = 1e-4;
  const double floor = best.blocks.weight * kRounding * kRounding;
  for (int round = 0; round < effort.rounds && damping < kGiveUp; ++round) {
    const ChainSolver solver(best.path, best.blocks, freedom, damping);
    const Path trial = moved(best.path, conditioned(solver, best.blocks, asked));
    Blocks blocks = blocks_of(trial, samples);
    const std::vector<Condition> left = conditions(trial, ties);
    const double before = merit(best.blocks, asked), after = merit(blocks, left);
    // To meet a known end fully costs a little of the squares.
    const bool nearer =
        missed(asked) > kMet && missed(left) < missed(asked) / 2 && after <= before * (1 + kEndCost);
    if (!(after <= before) && !nearer) {
      damping *= 10;
      continue;
    }
    best = {trial, std::move(blocks)};
    asked = left;
    damping = std::max(damping / 10, 1e-12);
    if ((before - after <= effort.fall * before || after <= floor) && missed(asked) <= kMet) break;
  }
  cut_last(best, ties.end ? ties.end->point : samples.back().at);
  best.valid = sound(best.path, ties.start ? ties.start->point : samples.front().at);
  best.missed = missed(asked);
  return best;
}

Spread spread_of(const Refined& fit, const Ties& ties, const std::vector<bool>& straight) {
  Freedom freedom = ties.freedom();
  freedom.straight = straight;
  return ChainSolver(fit.path, fit.blocks, freedom, 0).spread();
}

}  // namespace lamwright::fitting
