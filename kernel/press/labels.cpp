#include "kernel/press/labels.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

// Wide enough for any common letter.
Vec2 extent(const std::string& text, double height) {
  return {0.8 * height * double(code_points(text).size()), height};
}

struct Span {
  double from, to;
  bool holds(double x) const { return x >= from && x <= to; }
};

// Of the level line at y, what lies in the outline.
std::vector<Span> inside(const Outline& outline, const Box2& box, double y) {
  const Segment level = line({box.low.x() - 1, y}, {box.high.x() + 1, y});
  std::vector<double> cuts;
  for (const Segment& s : outline.segments())
    for (const Vec2& p : crossings(level, s)) cuts.push_back(p.x());
  std::sort(cuts.begin(), cuts.end());
  std::vector<Span> out;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i)
    if (outline.contains({(cuts[i] + cuts[i + 1]) / 2, y})) out.push_back({cuts[i], cuts[i + 1]});
  return out;
}

}  // namespace

Labels::Labels(const Part& part) : part_(part) {
  const Box2 box = part.outline().box();
  taken_.push_back({{-0.5, box.low.y()}, {0.5, box.high.y()}});  // the centre line
}

void Labels::add(std::vector<Mark>& marks, const std::string& text, const Vec2& wish) {
  for (const double height : {10.0, 7.0, 5.0, 3.5})
    if (const auto at = place(text, height, wish)) {
      taken_.push_back({*at, *at + extent(text, height)});
      marks.push_back({Mark::Kind::label, {}, text, *at, 0, height});
      return;
    }
}

bool Labels::free(const Vec2& low, const Vec2& high) const {
  constexpr double kMargin = 3;
  for (const Rect& r : taken_)
    if (low.x() < r.high.x() + kMargin && r.low.x() < high.x() + kMargin && low.y() < r.high.y() + kMargin &&
        r.low.y() < high.y() + kMargin)
      return false;
  for (const Bore& bore : part_.bores()) {
    const bool opens = bore.enters < 0 || bore.leaves < 0;
    const Vec2 at = bore.at.head<2>();
    const Vec2 off = (low - at).cwiseMax(at - high).cwiseMax(Vec2(0, 0));
    if (opens && std::abs(bore.axis.z()) > 0.5 && off.norm() < bore.diameter / 2 + kMargin) return false;
  }
  constexpr int kSteps = 8;
  for (int i = 0; i <= kSteps; ++i)
    for (const double y : {low.y(), high.y()}) {
      const Vec2 p{low.x() + (high.x() - low.x()) * i / kSteps, y};
      if (!part_.outline().contains(p) || part_.outline().distance(p) < kMargin) return false;
    }
  return true;
}

// Places of a grid, row by row from below: within `reach` of the wish, nearest first. Those whose low corner
// lies outside are left out, for most of a long curved part's box does.
std::vector<Labels::Place> Labels::places(const Vec2& size, const Vec2& wish, double reach) const {
  constexpr double kGrid = 8, kEdge = 4;
  const Box2 box = part_.outline().box();
  const auto first = [&](double low, double near) {
    return low + kEdge + kGrid * std::max(0.0, std::ceil((near - low - kEdge) / kGrid));
  };
  std::vector<Place> out;
  for (double y = first(box.low.y(), wish.y() - reach); y + size.y() < box.high.y() && y <= wish.y() + reach;
       y += kGrid) {
    const std::vector<Span> wood = inside(part_.outline(), box, y);
    const auto in_wood = [&](double x) {
      return std::any_of(wood.begin(), wood.end(), [x](const Span& s) { return s.holds(x); });
    };
    for (double x = first(box.low.x(), wish.x() - reach);
         x + size.x() < box.high.x() && x <= wish.x() + reach; x += kGrid)
      if (const double away = (Vec2(x, y) - wish).norm(); away <= reach && in_wood(x))
        out.push_back({{x, y}, rounded(away, 6)});
  }
  std::stable_sort(out.begin(), out.end(), [](const Place& a, const Place& b) { return a.away < b.away; });
  return out;
}

// Looked for in ever wider circles, so that a large part costs no more than a small one.
std::optional<Vec2> Labels::place(const std::string& text, double height, const Vec2& wish) const {
  const Vec2 size = extent(text, height);
  const Box2 box = part_.outline().box();
  const double farthest = (box.high - box.low).norm() + (wish - box.low).norm();
  for (double reach = 64;; reach *= 3) {
    for (const Place& place : places(size, wish, reach))
      if (free(place.at, place.at + size)) return place.at;
    if (reach > farthest) return std::nullopt;
  }
}

std::string station_text(std::optional<std::size_t> station, std::size_t formers) {
  return "station " + (station ? std::to_string(*station) : std::string("__")) + " of " +
         std::to_string(formers);
}

std::string job_text(const Job& job) {
  constexpr std::size_t kMost = 40;
  const std::u32string title = code_points(job.title);
  if (title.size() <= kMost) return (job.title.empty() ? "" : job.title + " ") + job.number;
  std::size_t bytes = 0;  // of the first letters
  for (std::size_t i = 0; i < kMost; ++i)
    bytes += title[i] < 0x80 ? 1 : title[i] < 0x800 ? 2 : title[i] < 0x10000 ? 3 : 4;
  return job.title.substr(0, bytes) + "... " + job.number;
}

}  // namespace lamwright
