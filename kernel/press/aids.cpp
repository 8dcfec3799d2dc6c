#include "kernel/press/aids.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/labels.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr double kLeastDepth = 20;  // a thinner strip bends or breaks
constexpr double kOfRadius = 0.6;   // of the least radius that a strip may take up on the inside of a bend
constexpr double kSawLine = 40;     // drawn length

// The parallel of the released panel at a height above its inner face, chord level.
Profile released_at(const Panel& panel, double height, const std::string& what) {
  return levelled(offset(panel.released, height - panel.face_height(), what));
}

// How deep a strip on one side (+1 outer, -1 inner) of a curve can be.
double strip_depth(const Profile& curve, int side) {
  double depth = kTemplateDepth;
  for (const Run& run : curve.runs())
    if (run.curvature * side < 0) depth = std::min(depth, kOfRadius / std::abs(run.curvature));
  return depth;
}

// The loop from one line back along another, ends joined by straight lines.
std::vector<Segment> joined(const Profile& there, const Profile& back) {
  std::vector<Segment> loop = segments(there), other = segments(back);
  loop.push_back(line(loop.back().to, other.back().to));
  for (auto s = other.rbegin(); s != other.rend(); ++s) loop.push_back(s->reversed());
  loop.push_back(line(other.front().from, loop.front().from));
  return loop;
}

Part board_part(const Job& job, PartKind kind, const std::string& name, Outline outline) {
  const FormerSpec& formers = job.formers;
  return make_part({name,
                    kind,
                    formers.board + " (" + number(formers.thickness) + " thick)",
                    std::move(outline),
                    formers.thickness,
                    {},
                    {},
                    {},
                    true});
}

Mark stroke(Mark::Kind kind, const Vec2& from, const Vec2& to) {
  return {kind, {line(from, to)}, {}, {0, 0}, 0, 0};
}

std::vector<Mark> named_marks(const Job& job, const Part& part, std::vector<Mark> marks,
                              const std::string& text) {
  const Box2 box = part.outline().box();
  Labels labels(part);
  labels.add(marks, "L", {box.low.x(), box.low.y()});
  labels.add(marks, "R", {box.high.x(), box.low.y()});
  labels.add(marks, text, {0, box.low.y()});
  labels.add(marks, job_text(job), {0, box.low.y()});
  return marks;
}

// Where the plumb line X = 0 crosses the part, from below.
std::optional<Mark> centre_line(const Part& part) {
  const Box2 box = part.outline().box();
  const Segment plumb = line({0, box.low.y() - 1}, {0, box.high.y() + 1});
  std::vector<double> heights;
  for (const Segment& s : part.outline().segments())
    for (const Vec2& p : crossings(plumb, s)) heights.push_back(p.y());
  if (heights.size() < 2) return std::nullopt;
  const auto [low, high] = std::minmax_element(heights.begin(), heights.end());
  return stroke(Mark::Kind::centre_line, {0, *low}, {0, *high});
}

ShopAid check_template(const Job& job, const Panel& panel, ShopAid::Use use) {
  const bool outer = use == ShopAid::Use::check_outer;
  const std::string face = outer ? "outer face" : "inner face";
  const Profile curve = released_at(panel, outer ? panel.thickness : 0, face);
  const int side = outer ? 1 : -1;
  const double depth = strip_depth(curve, side);
  if (depth < kLeastDepth)
    throw geometry_error(
        "check template",
        "a bend of the " + face + " is too tight for a strip of " + number(kLeastDepth) + " beside it",
        "check the panel with a former");
  const Profile back = offset(curve, side * depth, "check template");
  refuse_crossing(back, "check template");
  const Part part = board_part(job, PartKind::shape_template, outer ? "template-outer" : "template-inner",
                               Outline(joined(curve, back), "check template"));
  std::vector<Mark> marks;
  if (const auto centre = centre_line(part)) marks.push_back(*centre);
  return {use, part.marked(named_marks(job, part, std::move(marks), "check, " + face + ", as released")), 1};
}

// The curve with the trim, sides square down from its ends, base level.
Outline cradle_outline(const Profile& contact) {
  const double base = contact.box().low.y() - kCradleDepth;
  std::vector<Segment> loop = segments(contact);
  const Vec2 left = contact.start().point, right = contact.end().point;
  loop.push_back(line(right, {right.x(), base}));
  loop.push_back(line({right.x(), base}, {left.x(), base}));
  loop.push_back(line({left.x(), base}, left));
  return {std::move(loop), "trim cradle"};
}

ShopAid trim_cradle(const Job& job, const Panel& panel) {
  const Profile finished = released_at(panel, 0, "inner face");
  const Profile contact = levelled(extended(finished, panel.trim, panel.trim));
  const Box2 box = contact.box();
  if (box.low.x() < contact.start().point.x() - kAtLeast || box.high.x() > contact.end().point.x() + kAtLeast)
    throw geometry_error("trim cradle", "the panel's ends turn under, so it could not be laid on a cradle",
                         "trim it on its inner face with a fence");
  const Part part = board_part(job, PartKind::cradle, "trim-cradle", cradle_outline(contact));
  std::vector<Mark> marks;
  if (const auto centre = centre_line(part)) marks.push_back(*centre);
  for (const double s : {panel.trim, contact.girth() - panel.trim}) {
    const Pose pose = contact.at(s);
    marks.push_back(stroke(Mark::Kind::saw_line, pose.point, pose.point - kSawLine * pose.normal()));
  }
  const int count = std::max(2, int(std::ceil(panel.blank_width() / kCradleEvery)) + 1);
  return {ShopAid::Use::trim_cradle, part.marked(named_marks(job, part, std::move(marks), "trim cradle")),
          count};
}

}  // namespace

ShopAids shop_aids(const Job& job, const Panel& panel) {
  ShopAids out;
  const auto attempt = [&](const std::string& name, const auto& make) {
    try {
      out.aids.push_back(make());
    } catch (const Error& error) {
      out.notes.push_back("No " + name + ": " + error.problem() + "; " + error.remedy() + ".");
    }
  };
  if (!panel.released.straight()) {
    attempt("check template of the inner face",
            [&] { return check_template(job, panel, ShopAid::Use::check_inner); });
    attempt("check template of the outer face",
            [&] { return check_template(job, panel, ShopAid::Use::check_outer); });
    if (panel.trim > 0) attempt("trim cradle", [&] { return trim_cradle(job, panel); });
  }
  return out;
}

}  // namespace lamwright
