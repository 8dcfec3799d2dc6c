#include "kernel/caul/joint_patterns.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostSums = 200;
constexpr std::size_t kMostPatterns = 800;
constexpr long kMostSteps = 200'000;
constexpr double kMostOrders = 400;  // of slats in a run with one cut piece

void sort_out(std::vector<double>& stations) {
  std::sort(stations.begin(), stations.end());
  const auto same = [](double a, double b) { return b - a < kSamePoint; };
  stations.erase(std::unique(stations.begin(), stations.end(), same), stations.end());
}

// 0 and every sum of slats below the length; nothing when there are too many.
std::vector<double> sums(double length, const std::vector<double>& slats) {
  std::vector<double> all{0}, last{0};
  while (!last.empty()) {
    std::vector<double> next;
    for (const double sum : last)
      for (const double slat : slats)
        if (sum + slat < length - kSamePoint) next.push_back(sum + slat);
    sort_out(next);
    all.insert(all.end(), next.begin(), next.end());
    sort_out(all);
    if (all.size() > kMostSums) return {};
    last = std::move(next);
  }
  return all;
}

std::vector<double> slat_ends(double length, const std::vector<double>& slats) {
  if (slats.empty()) return {0};
  auto ends = sums(length, slats);
  if (ends.empty()) ends = sums(length, {*std::max_element(slats.begin(), slats.end())});
  return ends;
}

// The lengths whose orders in a run of that many pieces can all be tried: the longest.
std::vector<double> tried(const std::vector<double>& slats, int pieces) {
  std::size_t most = slats.size();
  while (most > 1 && pieces * std::pow(most, pieces - 1) > kMostOrders) --most;
  return {slats.end() - static_cast<std::ptrdiff_t>(most), slats.end()};
}

class Lister {
 public:
  Lister(const JointSpec& spec, JointGroup group, std::vector<Joints>& out)
      : spec_(spec), slats_(tried(spec.slats, group.pieces)), out_(out) {
    add(0, group.pieces, group.cuts);
  }
  bool finished() const { return !stopped_ && slats_.size() == spec_.slats.size(); }

 private:
  bool uncut(double piece) const {
    return std::any_of(spec_.slats.begin(), spec_.slats.end(),
                       [&](double slat) { return std::abs(slat - piece) < kSamePoint; });
  }

  std::vector<double> next_stations(double from, int cuts) const {
    std::vector<double> next;
    const auto take = [&](double at) {
      const double piece = at - from;
      if (piece > spec_.bridge - kAtLeast && piece < spec_.slats.back() + kSamePoint &&
          at < spec_.length - spec_.bridge + kAtLeast)
        next.push_back(at);
    };
    if (cuts > 0 || !spec_.at_slat_ends) std::for_each(spec_.stations.begin(), spec_.stations.end(), take);
    if (spec_.at_slat_ends)
      for (const double slat : slats_) take(from + slat);
    sort_out(next);
    return next;
  }

  void add(double from, int pieces, int cuts) {
    if (++steps_ > kMostSteps || out_.size() >= kMostPatterns) stopped_ = true;
    const double rest = spec_.length - from;
    if (stopped_ || cuts < 0 || cuts > pieces) return;
    if (rest > pieces * spec_.slats.back() + kSamePoint || rest < pieces * spec_.bridge - kAtLeast) return;
    if (pieces == 1) {
      if (uncut(rest) == (cuts == 0)) out_.push_back(joints_);
      return;
    }
    for (const double at : next_stations(from, cuts)) {
      joints_.push_back(at);
      add(at, pieces - 1, cuts - (uncut(at - from) ? 0 : 1));
      joints_.pop_back();
    }
  }

  const JointSpec& spec_;
  std::vector<double> slats_;
  std::vector<Joints>& out_;
  Joints joints_;
  long steps_ = 0;
  bool stopped_ = false;
};

}  // namespace

bool staggered(const Joints& a, const Joints& b, double bridge) {
  for (auto one = a.begin(), other = b.begin(); one != a.end() && other != b.end();) {
    if (std::abs(*one - *other) < bridge - kAtLeast) return false;
    if (*one < *other)
      ++one;
    else
      ++other;
  }
  return true;
}

std::vector<double> joint_stations(double length, double bridge, const std::vector<double>& slats,
                                   const std::vector<double>& at) {
  constexpr int kBeside = 2;
  std::vector<double> anchors = at;
  for (const double end : slat_ends(length, slats)) {
    anchors.push_back(end);
    anchors.push_back(length - end);
  }
  sort_out(anchors);
  std::vector<double> stations = anchors;
  for (const double anchor : anchors)
    for (int i = 1; i <= kBeside; ++i) {
      const double before = anchor - i * bridge, after = anchor + i * bridge;
      stations.insert(stations.end(),
                      {before, after, std::floor(before + kSamePoint), std::ceil(after - kSamePoint)});
    }
  std::erase_if(stations, [&](double s) { return s < bridge - kAtLeast || s > length - bridge + kAtLeast; });
  sort_out(stations);
  return stations;
}

JointPatterns joint_patterns(const JointSpec& spec) {
  JointPatterns out{{}, {spec.most_pieces + 1, 0}};
  bool all = true;
  for (int pieces = 2; pieces <= spec.most_pieces; ++pieces)
    for (int cuts = 0; cuts <= pieces && out.patterns.size() < kMostPatterns; ++cuts) {
      const bool finished = Lister(spec, {pieces, cuts}, out.patterns).finished();
      if (all && !finished) out.unlisted = {pieces, cuts};
      all = all && finished;
    }
  return out;
}

}  // namespace lamwright
