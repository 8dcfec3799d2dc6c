#include "kernel/press/one_part/former.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/caul/pilots.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::one_part {
namespace {

constexpr double kClampPitch = 200;

// Stations of two pilots with 5 of wood between them all the way down: under a crown their tips draw
// together.
double least_apart(const Profile& contact) {
  double closing = 1;
  for (const Run& run : contact.runs()) closing = std::min(closing, 1 - run.curvature * kCaulPilotDepth);
  constexpr double kTightest = 0.1;  // round a radius of little more than the depth one pilot is enough
  return (kCaulPilot + kLeastWood) / std::max(kTightest, closing);
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

void add_polyline(std::vector<Segment>& loop, const std::vector<Vec2>& points) {
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    if ((points[i + 1] - points[i]).norm() > kSamePoint) loop.push_back(line(points[i], points[i + 1]));
}

Outline former_outline(const PressFrame& frame, double groove) {
  std::vector<Segment> loop = segments(frame.contact);
  std::vector<Vec2> right = frame.right.edge, left = frame.left.edge;
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

BedCaul bed_caul(const Job& job, const PressFrame& frame, const Panel& panel) {
  const double left = frame.left.extend;
  const double d = -(frame.curves.bed + panel.neutral_height);
  const auto on_contact = [&](double s) { return left + offset_station(frame.curves.neutral, s, d); };
  std::vector<double> changes;
  for (const double s : frame.curves.neutral.shape_changes()) changes.push_back(on_contact(s));
  const double datum = on_contact(frame.curves.datum);
  BedCaul bed;
  if (job.caul.pitch) bed.slats = covering_slats(slat_spec(job.caul, frame.contact.girth(), datum, changes));
  if (job.caul.kind != CaulSpec::Kind::bare)
    bed.pilots = pilot_stations({left, frame.contact.girth() - frame.right.extend, datum, changes, bed.slats,
                                 least_apart(frame.contact)});
  return bed;
}

Part former_part(const FormerSpecs& in) {
  const FormerSpec& formers = in.job.formers;
  const double groove = in.grooved ? *formers.groove_depth : 0;
  const double middle = formers.thickness / 2;
  PartSpec spec{to_text(PartKind::former_lower),
                PartKind::former_lower,
                formers.board + " (" + number(formers.thickness) + " thick)",
                former_outline(in.frame, groove),
                formers.thickness,
                {},
                {},
                {},
                true};
  for (const double s : in.bed.pilots) {
    const Pose pose = in.frame.contact.at(s);
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
  for (const FlatPressed& flat : in.flats)
    for (const Vec2& c : flat.clamps)
      spec.bores.push_back(
          {BoreUse::clamp, formers.clamp_hole, std::nullopt, std::nullopt, {c.x(), c.y(), 0}, {0, 0, 1}});
  return make_part(std::move(spec));
}

}  // namespace lamwright::one_part
