#include "kernel/press/mould/marks.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/labels.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

constexpr double kBlankTick = 25, kTrimTick = 15;

Mark tick(Mark::Kind kind, const Vec2& from, const Vec2& to) {
  return {kind, {line(from, to)}, {}, {0, 0}, 0, 0};
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
  labels.add(marks, station_text({}, formers), wish(12, 12));
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
  labels.add(marks, station_text({}, formers), {12, 12});
  labels.add(marks, job_text(job), {12, depth / 2});
  return marks;
}

}  // namespace lamwright
