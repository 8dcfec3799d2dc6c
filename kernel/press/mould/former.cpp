#include "kernel/press/mould/former.hpp"

#include <algorithm>

#include "kernel/press/mould/caul.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

void add_polyline(std::vector<Segment>& loop, const std::vector<Vec2>& points) {
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    if ((points[i + 1] - points[i]).norm() > kSamePoint) loop.push_back(line(points[i], points[i + 1]));
}

}  // namespace

Outline former_outline(const Mould& mould, double groove) {
  std::vector<Segment> loop = segments(mould.contact);
  std::vector<Vec2> right = mould.right, left = mould.left;
  if (groove > 0) {
    right.push_back({right.back().x(), -groove});
    left.push_back({left.back().x(), -groove});
  }
  std::reverse(left.begin(), left.end());
  add_polyline(loop, right);
  add_polyline(loop, {right.back(), left.front()});
  add_polyline(loop, left);
  return {std::move(loop), "former"};
}

Part former_part(const FormerSpecs& in, const Frame& to) {
  const FormerSpec& formers = in.job.formers;
  const double groove = in.grooved ? *formers.groove_depth : 0;
  const double middle = formers.thickness / 2;
  PartSpec spec{to_text(in.kind),
                in.kind,
                formers.board + " (" + number(formers.thickness) + " thick)",
                former_outline(in.mould, groove),
                formers.thickness,
                {},
                {},
                {},
                true};
  for (const double s : in.pilots) {
    const Pose pose = in.mould.contact.at(s);
    const Vec2 inward = -pose.normal();
    spec.bores.push_back({BoreUse::caul_pilot,
                          kCaulPilot,
                          kCaulPilotDepth,
                          std::nullopt,
                          {pose.point.x(), pose.point.y(), middle},
                          {inward.x(), inward.y(), 0}});
  }
  if (!in.grooved)
    for (const double x : in.screws)
      spec.bores.push_back({BoreUse::foot_pilot,
                            rounded(0.7 * in.job.beams.screw_diameter, 1),
                            in.job.beams.screw_reach,
                            std::nullopt,
                            {x, 0, middle},
                            {0, 1, 0}});
  for (const Vec2& c : in.clamps)
    spec.bores.push_back(
        {BoreUse::clamp, formers.clamp_hole, std::nullopt, std::nullopt, {c.x(), c.y(), 0}, {0, 0, 1}});
  return make_part(reframed(std::move(spec), to));
}

}  // namespace lamwright
