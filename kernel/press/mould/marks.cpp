#include "kernel/press/mould/marks.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

constexpr double kBlankTick = 25, kTrimTick = 15;

Mark tick(Mark::Kind kind, const Vec2& from, const Vec2& to) {
  return {kind, {line(from, to)}, {}, {0, 0}, 0, 0};
}

std::string station_text(std::size_t formers) { return "station __ of " + std::to_string(formers); }

// Places texts on a part one after another, never over an edge, a bore in the face, or one another.
class Labels {
 public:
  explicit Labels(const Part& part) : part_(part) {
    const Box2 box = part.outline().box();
    taken_.push_back({{-0.5, box.low.y()}, {0.5, box.high.y()}});  // the centre line
  }

  // At the free place nearest to `wish`; left out when there is none even for small letters.
  void add(std::vector<Mark>& marks, const std::string& text, const Vec2& wish) {
    for (const double height : {10.0, 7.0, 5.0, 3.5})
      if (const auto at = place(text, height, wish)) {
        taken_.push_back({*at, *at + extent(text, height)});
        marks.push_back({Mark::Kind::label, {}, text, *at, 0, height});
        return;
      }
  }

 private:
  struct Rect {
    Vec2 low, high;
  };

  // Wide enough for any common letter.
  static Vec2 extent(const std::string& text, double height) {
    return {0.8 * height * double(code_points(text).size()), height};
  }

  bool free(const Vec2& low, const Vec2& high) const {
    constexpr double kMargin = 3;
    for (const Rect& r : taken_)
      if (low.x() < r.high.x() + kMargin && r.low.x() < high.x() + kMargin &&
          low.y() < r.high.y() + kMargin && r.low.y() < high.y() + kMargin)
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

  // Places of a grid, row by row from below: within `reach` of the wish, nearest first.
  struct Place {
    Vec2 at;
    double away;
  };
  std::vector<Place> places(const Vec2& size, const Vec2& wish, double reach) const {
    constexpr double kGrid = 8, kEdge = 4;
    const Box2 box = part_.outline().box();
    const auto first = [&](double low, double near) {
      return low + kEdge + kGrid * std::max(0.0, std::ceil((near - low - kEdge) / kGrid));
    };
    std::vector<Place> out;
    for (double y = first(box.low.y(), wish.y() - reach);
         y + size.y() < box.high.y() && y <= wish.y() + reach; y += kGrid)
      for (double x = first(box.low.x(), wish.x() - reach);
           x + size.x() < box.high.x() && x <= wish.x() + reach; x += kGrid)
        if (const double away = (Vec2(x, y) - wish).norm(); away <= reach)
          out.push_back({{x, y}, rounded(away, 6)});
    std::stable_sort(out.begin(), out.end(), [](const Place& a, const Place& b) { return a.away < b.away; });
    return out;
  }

  // Looked for in ever wider circles, so that a large part costs no more than a small one.
  std::optional<Vec2> place(const std::string& text, double height, const Vec2& wish) const {
    const Vec2 size = extent(text, height);
    const Box2 box = part_.outline().box();
    const double farthest = (box.high - box.low).norm() + (wish - box.low).norm();
    for (double reach = 64;; reach *= 3) {
      for (const Place& place : places(size, wish, reach))
        if (free(place.at, place.at + size)) return place.at;
      if (reach > farthest) return std::nullopt;
    }
  }

  const Part& part_;
  std::vector<Rect> taken_;
};

std::string job_text(const Job& job) {
  constexpr std::size_t kMost = 40;
  const std::u32string title = code_points(job.title);
  if (title.size() <= kMost) return (job.title.empty() ? "" : job.title + " ") + job.number;
  std::size_t bytes = 0;  // of the first letters
  for (std::size_t i = 0; i < kMost; ++i)
    bytes += title[i] < 0x80 ? 1 : title[i] < 0x800 ? 2 : title[i] < 0x10000 ? 3 : 4;
  return job.title.substr(0, bytes) + "... " + job.number;
}

// Height where the plumb line X = 0 meets the contact edge, on the outer side of the wood.
double contact_at_middle(const MarkedEdge& edge) {
  const Box2 box = edge.contact.box();
  const Segment plumb = line({0, box.high.y() + 1}, {0, box.low.y() - 1});
  double found = edge.wood < 0 ? 0 : box.high.y();
  for (const Segment& s : segments(edge.contact))
    for (const Vec2& p : crossings(plumb, s))
      found = edge.wood < 0 ? std::max(found, p.y()) : std::min(found, p.y());
  return found;
}

}  // namespace

std::vector<Mark> former_marks(const Job& job, const MarkedEdge& edge, const Part& former,
                               std::size_t formers) {
  std::vector<Mark> marks{tick(Mark::Kind::centre_line, {0, edge.foot}, {0, contact_at_middle(edge)})};
  const double begin = edge.left_extend, end = edge.contact.girth() - edge.right_extend,
               trim = job.panel.trim;
  const auto inward = [&](Mark::Kind kind, double s, double length) {
    const Pose pose = edge.contact.at(s);
    marks.push_back(tick(kind, pose.point, pose.point + edge.wood * length * pose.normal()));
  };
  for (const double s : {begin, end}) inward(Mark::Kind::blank_end, s, kBlankTick);
  if (trim > 0)
    for (const double s : {begin + trim, end - trim}) inward(Mark::Kind::trim_line, s, kTrimTick);
  const Box2 box = former.outline().box();
  const auto wish = [&](double x, double y) { return Vec2(x, edge.foot - edge.wood * y); };
  Labels labels(former);
  labels.add(marks, "L", {box.low.x(), edge.foot});
  labels.add(marks, "R", {box.high.x(), edge.foot});
  labels.add(marks, station_text(formers), wish(12, 12));
  labels.add(marks, job_text(job), wish(12, 28));
  return marks;
}

BeamTicks beam_ticks(const Profile& inner, double trim, double tilt) {
  const auto at = [&](double s) { return inner.point(s).x() / std::cos(tilt); };
  BeamTicks ticks{{at(0), at(inner.girth())}, {}};
  if (trim > 0) ticks.trim_lines = {at(trim), at(inner.girth() - trim)};
  return ticks;
}

std::vector<Mark> beam_marks(const Job& job, const BeamTicks& ticks, const Part& beam, std::size_t formers) {
  const Box2 box = beam.outline().box();
  const double from = box.low.x(), to = box.high.x();
  const double depth = job.beams.depth;
  std::vector<Mark> marks{tick(Mark::Kind::centre_line, {0, 0}, {0, depth})};
  const auto drop = [&](Mark::Kind kind, double x, double length) {
    if (x > from && x < to) marks.push_back(tick(kind, {x, depth}, {x, depth - length}));
  };
  for (const double x : ticks.blank_ends) drop(Mark::Kind::blank_end, x, kBlankTick);
  for (const double x : ticks.trim_lines) drop(Mark::Kind::trim_line, x, kTrimTick);
  Labels labels(beam);
  labels.add(marks, "L", {from, depth / 2});
  labels.add(marks, "R", {to, depth / 2});
  labels.add(marks, station_text(formers), {12, 12});
  labels.add(marks, job_text(job), {12, depth / 2});
  return marks;
}

}  // namespace lamwright
