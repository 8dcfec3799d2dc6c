#include "kernel/profile/fit/grid.hpp"

#include <algorithm>

namespace lamwright::fitting {
namespace {

constexpr std::size_t kJointsAnArc = 14;

// A frame in the middle of a stretch, along its chord: good enough for an arc of up to a quarter turn.
Frame chord_frame(const std::vector<Sample>& samples, std::size_t from, std::size_t to) {
  const Vec2 chord = samples[to - 1].at - samples[from].at;
  const Vec2 along = chord.norm() > 0 ? Vec2(chord.normalized()) : Vec2(1, 0);
  return {samples[(from + to) / 2].at, along};
}

// The foot of the frame on the arc fitted in it, and the direction there.
Frame on_arc(const Frame& frame, const Eigen::Vector3d& arc) {
  const double b = arc[1];
  return {frame.at + arc[0] * frame.across(), (frame.along + b * frame.across()).normalized()};
}

// The frame at a joint, from an arc through the samples about it, fitted twice since the first frame may lie
// off and askew.
Frame frame_at(const std::vector<Sample>& samples, const Moments& moments, std::size_t joint,
               std::size_t reach) {
  const std::size_t from = joint > reach ? joint - reach : 0;
  const std::size_t to = std::min(samples.size(), joint + reach);
  Frame frame = chord_frame(samples, from, to);
  if (joint == 0)
    frame.at = samples.front().at;
  else if (joint == samples.size())
    frame.at = samples.back().at;
  else
    frame.at = (samples[joint - 1].at + samples[joint].at) / 2;
  for (int i = 0; i < 2 && to - from > 2; ++i) frame = on_arc(frame, moments.stretch(from, to, frame).best());
  return frame;
}

bool one_arc(const std::vector<Sample>& samples, const Moments& moments, std::size_t from, std::size_t to,
             double bound) {
  if (to - from <= 3) return true;
  Frame frame = chord_frame(samples, from, to);
  frame = on_arc(frame, moments.stretch(from, to, frame).best());
  const double least = moments.stretch(from, to, frame).least();
  return least <= bound * bound * moments.weight(from, to);
}

// The end of the longest arc from a sample on, found by doubling and halving.
std::size_t arc_end(const std::vector<Sample>& samples, const Moments& moments, std::size_t from,
                    double bound) {
  std::size_t good = std::min(from + 3, samples.size()), step = 4;
  while (good < samples.size()) {
    const std::size_t next = std::min(from + step, samples.size());
    if (!one_arc(samples, moments, from, next, bound)) break;
    good = next;
    step *= 2;
  }
  for (std::size_t bad = std::min(from + step, samples.size() + 1); bad > good + 1;) {
    const std::size_t middle = (good + bad) / 2;
    (one_arc(samples, moments, from, middle, bound) ? good : bad) = middle;
  }
  return good;
}

// Bow of a part of an arc.
double bow(const std::vector<Sample>& samples, const Moments& moments, std::size_t from, std::size_t to,
           std::size_t parts) {
  if (to - from <= 3) return 0;
  const double curvature = moments.stretch(from, to, chord_frame(samples, from, to)).best()[2];
  const double part = (samples[to - 1].at - samples[from].at).norm() / static_cast<double>(parts);
  return std::abs(curvature) * part * part / 8;
}

}  // namespace

Grid grid_of(const std::vector<Sample>& samples, const Moments& moments, double bound, std::size_t least) {
  std::vector<std::size_t> ends{0};
  while (ends.back() < samples.size()) ends.push_back(arc_end(samples, moments, ends.back(), bound));
  Grid grid{{0}, {}, ends.size() - 1, 0};
  const std::size_t widest = (samples.size() + least - 1) / least;
  for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
    const std::size_t size = ends[i + 1] - ends[i];
    const std::size_t parts = std::min(size, std::max(kJointsAnArc, (size + widest - 1) / widest));
    for (std::size_t j = 1; j <= parts; ++j) grid.at.push_back(ends[i] + size * j / parts);
    grid.slack += bow(samples, moments, ends[i], ends[i + 1], parts) / static_cast<double>(grid.arcs);
  }
  for (std::size_t j = 0; j < grid.at.size(); ++j) {
    const std::size_t before = j > 1 ? grid.at[j] - grid.at[j - 2] : 0;
    const std::size_t after = j + 2 < grid.at.size() ? grid.at[j + 2] - grid.at[j] : 0;
    grid.frames.push_back(frame_at(samples, moments, grid.at[j], std::max<std::size_t>({before, after, 3})));
  }
  return grid;
}

}  // namespace lamwright::fitting
