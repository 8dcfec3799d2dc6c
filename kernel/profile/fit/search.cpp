#include "kernel/profile/fit/search.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "kernel/profile/fit/answers.hpp"
#include "kernel/profile/fit/programme.hpp"
#include "kernel/profile/fit/samples.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright::fitting {
namespace {

constexpr std::size_t kMeans = 400;      // as many tell all that a dozen runs have to say
constexpr std::size_t kMeansAnArc = 40;  // where runs are more
constexpr std::size_t kJoints = 80;      // candidates of a profile of few runs
constexpr std::size_t kMostArcs = 300;   // memory grows by their square: half a gigabyte
constexpr std::size_t kKept = 3;         // chains followed at each joint
constexpr double kLooser = 2;            // bound of the starts over the tolerance
constexpr double kLooserOfMany = 1;
constexpr std::size_t kOneByOne = 24;  // runs up to which every count is tried
constexpr std::size_t kMerges = 24;    // tried as proof, the likeliest first
constexpr std::size_t kShuffles = 12;  // joints taken out to set another, the likeliest first
constexpr double kTelling = 1e-3;      // share of the tolerance below which deviations tell nothing
constexpr double kNear = 3;            // greatest distance over tolerance of an answer worth bettering
constexpr double kHelps = 0.98;        // share of the squares below which an answer is better

// Starts from a known point, in its heading, instead of where the path begins.
Path tied(Path path, const Ties& ties) {
  if (!ties.start) return path;
  const Pose& pose = path.start;
  Run& first = path.runs.front();
  first.length -= station_on(seen_from(pose, pose.tangent(), ties.start->point), first);
  first.length = std::max(first.length, 1.0);
  path.start = {ties.start->point, ties.start->heading.value_or(pose.heading)};
  return path;
}

Path line_through(const std::vector<Sample>& points) {
  const Vec2 way = points.back().at - points.front().at;
  return {{points.front().at, std::atan2(way.y(), way.x())}, {{way.norm(), 0}}};
}

// Runs i and i + 1 as one that turns as much.
Path merged(const Path& path, std::size_t i) {
  Path out = path;
  const Run &a = path.runs[i], &b = path.runs[i + 1];
  const double length = a.length + b.length;
  out.runs[i] = {length, (a.turn() + b.turn()) / length};
  out.runs.erase(out.runs.begin() + static_cast<std::ptrdiff_t>(i) + 1);
  return out;
}

Path split(const Path& path, std::size_t i) {
  Path out = path;
  out.runs[i].length /= 2;
  out.runs.insert(out.runs.begin() + static_cast<std::ptrdiff_t>(i), out.runs[i]);
  return out;
}

std::size_t worst_run(const Refined& fit) {
  const auto less = [](const RunBlock& a, const RunBlock& b) { return a.squares < b.squares; };
  const auto& runs = fit.blocks.runs;
  return static_cast<std::size_t>(std::max_element(runs.begin(), runs.end(), less) - runs.begin());
}

// Joints in order of how little the profile would be off without them: by the bow that the change of
// curvature makes over the shorter neighbour.
std::vector<std::size_t> slightest_joints(const Path& path, std::size_t most) {
  std::vector<double> bow;
  for (std::size_t i = 0; i + 1 < path.runs.size(); ++i) {
    const double reach = std::min(path.runs[i].length, path.runs[i + 1].length);
    bow.push_back(std::abs(path.runs[i].curvature - path.runs[i + 1].curvature) * reach * reach);
  }
  std::vector<std::size_t> out(bow.size());
  std::iota(out.begin(), out.end(), 0);
  std::stable_sort(out.begin(), out.end(), [&](auto a, auto b) { return bow[a] < bow[b]; });
  out.resize(std::min(out.size(), most));
  return out;
}

// Deviations that noise does not explain and that another set of joints may do away with.
bool may_be_misfit(const Problem& problem, const Refined& fit) {
  const double noise = problem.sigma * problem.sigma * static_cast<double>(problem.means.size());
  const double floor = std::pow(kTelling * problem.tolerance, 2) * fit.blocks.weight;
  return fit.blocks.squares > 1.5 * noise + floor && fit.blocks.greatest < kNear * problem.tolerance;
}

// Other ways to set as many joints: one taken out and the worst run split, as long as that helps.
void reshuffle(const Problem& problem, Answers& answers) {
  double squares = INFINITY;
  while (!answers.found().empty() && answers.found().front().blocks.squares < kHelps * squares) {
    const Refined best = answers.found().front();
    if (best.path.runs.size() < 2 || !may_be_misfit(problem, best)) return;
    squares = best.blocks.squares;
    for (const std::size_t i : slightest_joints(best.path, kShuffles)) {
      Answers fewer(problem);
      fewer.try_from(merged(best.path, i));
      for (const Refined& fit : fewer.found()) answers.try_from(split(fit.path, worst_run(fit)));
    }
  }
}

// One run fewer, by merges, as long as the tolerance is kept.
Found proven(const Problem& problem, Found found) {
  while (found.fit.path.runs.size() > 1) {
    Answers fewer(problem);
    for (const std::size_t i : slightest_joints(found.fit.path, kMerges))
      fewer.try_from(merged(found.fit.path, i));
    auto less = fewer.within();
    if (!less) break;
    found = std::move(*less);
  }
  return found;
}

struct Starts {
  std::vector<std::vector<Start>> of;  // by count of runs, from 0 on
  std::size_t most = 1;

  std::size_t first() const {
    return static_cast<std::size_t>(std::find_if(of.begin(), of.end(), some) - of.begin());
  }
  std::size_t last() const {
    return of.size() - 1 - static_cast<std::size_t>(std::find_if(of.rbegin(), of.rend(), some) - of.rbegin());
  }
  static bool some(const std::vector<Start>& starts) { return !starts.empty(); }
};

Starts starts_for(const Problem& problem, double bound, std::size_t least) {
  const Moments moments(problem.means);
  const Grid grid = grid_of(problem.means, moments, bound, kJoints);
  if (grid.arcs > kMostArcs)
    throw geometry_error("points",
                         "ask for " + std::to_string(grid.arcs) + " arcs within " +
                             number(problem.tolerance) + ", and at most " + std::to_string(kMostArcs) +
                             " are fitted",
                         "raise the tolerance, or fit the curve in pieces");
  const std::size_t told = std::max<std::size_t>(1, (problem.points.size() - 1) / 2);
  Starts out;
  out.most = std::min(told, std::max(least, 2 * grid.arcs + 6));
  const double looser = grid.arcs > kOneByOne ? kLooserOfMany : kLooser;
  out.of = programme(moments, grid, looser * bound + 2 * grid.slack, out.most, kKept);
  return out;
}

Answers answers_from(const Problem& problem, const std::vector<Start>& starts) {
  Answers out(problem);
  for (const Start& start : starts) out.try_from(tied(start.path, problem.ties));
  return out;
}

// Counts from `from` on, one by one; also from the best answer of one run fewer, its worst run split.
std::optional<Found> upward(const Problem& problem, const Starts& starts, std::size_t from, std::size_t to) {
  std::optional<Refined> before;
  for (std::size_t n = from; n <= to; ++n) {
    Answers answers = answers_from(problem, starts.of[n]);
    if (before) answers.try_from(split(before->path, worst_run(*before)));
    reshuffle(problem, answers);
    if (auto fit = answers.within()) return fit;
    before.reset();
    if (!answers.found().empty()) before = answers.found().front();
  }
  return {};
}

// Among counts that have starts, by halves, as deviations fall with the count.
std::optional<Found> by_halves(const Problem& problem, const Starts& starts) {
  std::optional<Found> best;
  std::size_t below = starts.first() - 1, above = starts.last() + 1;
  while (above - below > 1) {
    const std::size_t n = below + (above - below) / 2;
    if (auto fit = answers_from(problem, starts.of[n]).within()) {
      best = std::move(fit);
      above = n;
    } else {
      below = n;
    }
  }
  return best;
}

}  // namespace

Problem problem(const std::vector<Vec2>& points, const Ties& ties, double tolerance, double sigma) {
  Problem out{singles(points), {}, ties, tolerance, sigma, false};
  const std::vector<Sample> few = means(points, kMeans);
  const std::size_t arcs = grid_of(few, Moments(few), tolerance, 1).arcs;
  out.means = means(points, std::max(kMeans, kMeansAnArc * arcs));
  return out;
}

std::optional<Found> fewest(const Problem& problem) {
  if (problem.points.size() == 2) return from_start(problem, line_through(problem.points));
  const Starts starts = starts_for(problem, problem.tolerance, 1);
  const std::size_t first = starts.first();
  if (first > starts.most) return {};
  std::optional<Found> fit;
  if (first > kOneByOne) fit = by_halves(problem, starts);
  if (!fit) fit = upward(problem, starts, first > kOneByOne ? starts.last() : first, starts.most);
  if (!fit) return {};
  return proven(problem, std::move(*fit));
}

std::optional<Found> exactly(const Problem& problem, std::size_t n) {
  const Starts starts = starts_for(problem, INFINITY, n);
  if (n > starts.most) return {};
  const Answers answers = answers_from(problem, starts.of[n]);
  for (const Refined& sketch : answers.found()) {
    Refined fit = polished(problem, sketch.path);
    if (fit.sound()) return Found{std::move(fit), problem.points};
  }
  return {};
}

std::optional<Found> from_start(const Problem& problem, const Path& start) {
  Refined fit = polished(problem, tied(start, problem.ties));
  if (!fit.sound()) return {};
  return Found{std::move(fit), problem.points};
}

}  // namespace lamwright::fitting
