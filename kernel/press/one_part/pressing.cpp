#include "kernel/press/one_part/pressing.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::one_part {
namespace {

constexpr double kClampPitch = 200;
constexpr double kGrooveSide = 2;   // groove wider than the strap by this much in all
constexpr double kGrooveDepth = 2;  // and deeper than it is thick

// The cross-section across the beam: a groove from below for the strap.
Outline grooved_section(double width, double depth, double groove, double sink) {
  const double cheek = (width - groove) / 2;
  const std::vector<Vec2> corners{
      {0, 0},     {cheek, 0},     {cheek, sink}, {width - cheek, sink}, {width - cheek, 0},
      {width, 0}, {width, depth}, {0, depth}};
  return polygon(corners, "pressing beam");
}

// A clamp hole gives way along the flat to the foot pilot at X = 0, which never moves.
bool clears_centre_pilot(const Job& job, const Vec2& centre) {
  const Vec2 nearest{0, std::clamp(centre.y(), 0.0, job.beams.screw_reach)};
  return (nearest - centre).norm() >=
         job.formers.clamp_hole / 2 + 0.35 * job.beams.screw_diameter + kLeastWood;
}

Vec2 cleared(const Job& job, const Vec2& centre, const Vec2& along, double most) {
  for (double shift = 0; shift <= most; ++shift)
    for (const double sense : {1.0, -1.0})
      if (clears_centre_pilot(job, centre + sense * shift * along)) return centre + sense * shift * along;
  return centre;
}

std::vector<Vec2> clamp_centres(const Job& job, const PressFrame& frame, double from, double to,
                                double to_contact) {
  const double length = to - from;
  const int count = std::max(1, int(std::ceil(length / kClampPitch - kWholeNumber)));
  std::vector<Vec2> centres;
  for (int i = 0; i < count; ++i) {
    const Pose pose = frame.curves.neutral.at(from + (i + 0.5) * length / count);
    const Vec2 centre = pose.point - (to_contact + kClampInside + job.formers.clamp_hole / 2) * pose.normal();
    centres.push_back(cleared(job, centre, pose.tangent(), length / count / 2));
    const double under = centres.back().y() - job.formers.clamp_hole / 2 - kLeastWood;
    if (under < 0)
      throw geometry_error("formers.min_depth",
                           "a clamp hole of " + number(job.formers.clamp_hole) +
                               " for a flat would come within 5 of the former's foot",
                           "raise it to " + number(tenth_above(job.formers.min_depth - under)));
  }
  return centres;
}

}  // namespace

std::vector<FlatPressed> flats(const Job& job, const PressFrame& frame, const Panel& panel) {
  std::vector<FlatPressed> out;
  const Profile& neutral = frame.curves.neutral;
  const double to_contact = panel.neutral_height + frame.curves.bed;
  for (std::size_t i = 0; i < neutral.runs().size(); ++i) {
    if (!neutral.runs()[i].straight() || neutral.runs()[i].length < kLeastFlat - kAtLeast) continue;
    const double from = neutral.station(i), to = neutral.station(i + 1);
    out.push_back({from, to, clamp_centres(job, frame, from, to, to_contact)});
  }
  return out;
}

PressingBeam pressing_beam(const Job& job, const PressFrame& frame, const Panel& panel,
                           const FlatPressed& flat, bool strapped) {
  const double width = job.formers.pressing_width, depth = job.formers.pressing_depth,
               length = flat.to - flat.from;
  const double groove = job.straps.width + kGrooveSide;
  const bool grooved = strapped && groove <= width - 2 * kLeastWood;
  const std::string stock = job.beams.timber_class + " " + number(width) + " x " + number(depth);
  PartSpec spec{to_text(PartKind::pressing_beam),
                PartKind::pressing_beam,
                stock,
                rectangle({0, 0}, {length, depth}),
                width,
                {},
                {},
                {},
                false};
  if (grooved) {
    spec.outline = grooved_section(width, depth, groove, job.straps.thickness + kGrooveDepth);
    spec.thickness = length;
    spec.sheet = {{length, 0, 0}, {0, 0, 1}, {0, 1, 0}};
  }
  const Pose pose = frame.curves.neutral.at(flat.from);
  const double up = panel.thickness - panel.neutral_height + panel.cover + frame.curves.top +
                    (strapped && !grooved ? job.straps.thickness : 0);
  const Vec2 at = pose.point + up * pose.normal();
  const Frame placed{{at.x(), at.y(), -width / 2},
                     {pose.tangent().x(), pose.tangent().y(), 0},
                     {pose.normal().x(), pose.normal().y(), 0}};
  return {make_part(std::move(spec)), placed, grooved};
}

}  // namespace lamwright::one_part
