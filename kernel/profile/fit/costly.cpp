#include "kernel/profile/fit/costly.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace lamwright::fitting {
namespace {

constexpr std::size_t kThin = 3;   // points on a run that may have been made for a wrong one
constexpr std::size_t kSaved = 2;  // runs that a wrong point costs, at least
constexpr std::size_t kMostPoints = 3000;
constexpr std::size_t kMostTries = 40;  // in a round
constexpr std::size_t kOneIn = 10;      // points of which one may be left out

using Positions = std::vector<std::size_t>;

Positions joined(Positions a, const Positions& b) {
  a.insert(a.end(), b.begin(), b.end());
  std::sort(a.begin(), a.end());
  a.erase(std::unique(a.begin(), a.end()), a.end());
  return a;
}

// Points on runs that few points hold, and their next neighbours.
Positions doubtful(const std::vector<Vec2>& points, const Path& path) {
  Follower follower(path);
  std::vector<Positions> on(path.runs.size());
  for (std::size_t i = 0; i < points.size(); ++i) on[follower.run_of(points[i])].push_back(i);
  std::set<std::size_t> out;
  for (std::size_t run = 0; run < on.size(); ++run) {
    if (on[run].size() > kThin) continue;
    for (const std::size_t i : on[run])
      for (std::size_t near = i > 0 ? i - 1 : 0; near <= std::min(i + 1, points.size() - 1); ++near)
        out.insert(near);
  }
  return {out.begin(), out.end()};
}

Positions all(std::size_t count) {
  Positions out(count);
  for (std::size_t i = 0; i < count; ++i) out[i] = i;
  return out;
}

class Search {
 public:
  Search(const Measured& measured, std::optional<Path> path, const PathWithout& path_without)
      : points_(measured.points.at),
        limit_(stray_limit(measured)),
        out_(measured.strays),
        most_(std::max<std::size_t>(1, points_.size() / kOneIn)),
        path_(std::move(path)),
        path_without_(path_without) {}

  Positions run() {
    while (out_.size() < most_ && (taken(1) || taken(2))) {
    }
    return out_;
  }

 private:
  struct Trial {
    Positions group;
    std::optional<Path> path;
  };

  // Leaves out the group, of so many points in a row, that saves the most runs.
  bool taken(std::size_t size) {
    if (out_.size() + size > most_) return false;
    const Positions candidates = path_ ? doubtful(points_, *path_) : all(points_.size());
    if (candidates.size() > kMostTries) return false;
    Trial best{{}, path_};
    for (const std::size_t from : candidates) {
      if (path_ && at_an_end(from, size)) continue;
      if (from + size > points_.size()) continue;
      Positions group;
      for (std::size_t i = from; i < from + size; ++i) group.push_back(i);
      auto path = path_without_(joined(out_, group));
      if (path && runs(path) < runs(best.path) && lies_off(group, *path)) best = {group, std::move(path)};
    }
    if (best.group.empty() || (path_ && runs(best.path) + kSaved * size > runs(path_))) return false;
    out_ = joined(out_, best.group);
    path_ = best.path;
    return true;
  }

  // Beyond the last point but one a path is carried on, and tells little of where the last should lie.
  bool at_an_end(std::size_t from, std::size_t size) const {
    return from == 0 || from + size >= points_.size();
  }

  static std::size_t runs(const std::optional<Path>& path) { return path ? path->runs.size() : SIZE_MAX; }

  bool lies_off(const Positions& group, const Path& path) const {
    std::vector<Vec2> points;
    for (const std::size_t i : group) points.push_back(points_[i]);
    const std::vector<double> off = distances(path, points);
    return std::all_of(off.begin(), off.end(), [&](double d) { return std::abs(d) > limit_; });
  }

  const std::vector<Vec2>& points_;
  double limit_;
  Positions out_;
  std::size_t most_;
  std::optional<Path> path_;
  const PathWithout& path_without_;
};

}  // namespace

std::vector<std::size_t> costly_points(const Measured& measured, const std::optional<Path>& path,
                                       const PathWithout& path_without) {
  if (measured.points.at.size() > kMostPoints) return measured.strays;
  return Search(measured, path, path_without).run();
}

}  // namespace lamwright::fitting
