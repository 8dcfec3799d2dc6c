#include "kernel/press/one_part/marks.hpp"

#include "kernel/profile/offset.hpp"

namespace lamwright::one_part {
namespace {

constexpr double kText = 10;
constexpr double kBlankTick = 25, kTrimTick = 15;

Mark tick(Mark::Kind kind, const Vec2& from, const Vec2& to) {
  return {kind, {line(from, to)}, {}, {0, 0}, 0, 0};
}

Mark label(const std::string& text, const Vec2& at) { return {Mark::Kind::label, {}, text, at, 0, kText}; }

std::string station_text(std::size_t formers) { return "station __ of " + std::to_string(formers); }

std::string job_text(const Job& job) { return (job.title.empty() ? "" : job.title + "  ") + job.number; }

// Height of the contact edge over the middle of the chord.
double contact_over_middle(const PressFrame& frame) {
  const Box2 box = frame.contact.box();
  const Segment plumb = line({0, box.high.y() + 1}, {0, -1});
  double top = 0;
  for (const Segment& s : segments(frame.contact))
    for (const Vec2& p : crossings(plumb, s)) top = std::max(top, p.y());
  return top;
}

}  // namespace

std::vector<Mark> former_marks(const Job& job, const PressFrame& frame, std::size_t formers) {
  std::vector<Mark> marks{tick(Mark::Kind::centre_line, {0, 0}, {0, contact_over_middle(frame)})};
  const double begin = frame.left.extend, end = frame.contact.girth() - frame.right.extend,
               trim = job.panel.trim;
  const auto inward = [&](Mark::Kind kind, double s, double length) {
    const Pose pose = frame.contact.at(s);
    marks.push_back(tick(kind, pose.point, pose.point - length * pose.normal()));
  };
  for (const double s : {begin, end}) inward(Mark::Kind::blank_end, s, kBlankTick);
  if (trim > 0)
    for (const double s : {begin + trim, end - trim}) inward(Mark::Kind::trim_line, s, kTrimTick);
  marks.push_back(label("L", {frame.foot_left() + 12, 12}));
  marks.push_back(label("R", {frame.foot_right() - 12 - kText, 12}));
  marks.push_back(label(job_text(job), {12, 36}));
  marks.push_back(label(station_text(formers), {12, 12}));
  return marks;
}

std::vector<Mark> beam_marks(const Job& job, const PressFrame& frame, double from, double to,
                             std::size_t formers) {
  const double depth = job.beams.depth, trim = job.panel.trim;
  std::vector<Mark> marks{tick(Mark::Kind::centre_line, {0, 0}, {0, depth})};
  const Profile& inner = frame.curves.inner;
  const auto drop = [&](Mark::Kind kind, double x, double length) {
    if (x > from && x < to) marks.push_back(tick(kind, {x, depth}, {x, depth - length}));
  };
  for (const double s : {0.0, inner.girth()}) drop(Mark::Kind::blank_end, inner.point(s).x(), kBlankTick);
  if (trim > 0)
    for (const double s : {trim, inner.girth() - trim})
      drop(Mark::Kind::trim_line, inner.point(s).x(), kTrimTick);
  marks.push_back(label("L", {from + 12, depth / 2 - kText / 2}));
  marks.push_back(label("R", {to - 12 - kText, depth / 2 - kText / 2}));
  marks.push_back(label(job_text(job), {12, depth - 12 - kText}));
  marks.push_back(label(station_text(formers), {12, depth - 30 - kText}));
  return marks;
}

}  // namespace lamwright::one_part
