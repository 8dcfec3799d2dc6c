#include "kernel/press/one_part/pressing.hpp"

#include "shared/number.hpp"

namespace lamwright::one_part {
namespace {

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

}  // namespace

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
