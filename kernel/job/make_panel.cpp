#include "kernel/job/make_panel.hpp"

#include "kernel/mechanics/springback.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

std::vector<Ply> stacked(const LayupSpec& layup) {
  std::vector<Ply> plies;
  double height = 0;
  for (const PlySpec& spec : layup.plies) {
    if (!plies.empty()) height += layup.glue_line;
    plies.push_back({spec.timber, spec.thickness, spec.grain, spec.modulus, spec.across, height,
                     height + spec.thickness});
    height += spec.thickness;
  }
  return plies;
}

std::vector<Lamina> section_of(const std::vector<Ply>& plies) {
  std::vector<Lamina> section;
  for (const Ply& ply : plies) section.push_back({ply.modulus, ply.from, ply.to});
  return section;
}

// Radii of a test piece are of the described face; its neutral line lies `height` further out.
Springback springback_of(const SpringbackSpec& spec, const std::vector<Ply>& plies, double height) {
  switch (spec.kind) {
    case SpringbackSpec::Kind::none:
      return {0, "none, as the job says"};
    case SpringbackSpec::Kind::share:
      return {spec.share, "share given in the job"};
    case SpringbackSpec::Kind::test_piece:
      if (spec.form_radius + height <= 0 || spec.part_radius + height <= 0)
        throw job_error({{}, 0, 0, "press.springback"},
                        "the test piece's radius is smaller than its own thickness",
                        "give the radii of the face that panel.face names");
      return {
          share_of_test_piece(spec.form_radius + height, spec.part_radius + height),
          "test piece pressed at " + number(spec.form_radius) + ", released at " + number(spec.part_radius)};
    case SpringbackSpec::Kind::computed:
      break;
  }
  if (plies.size() == 1)
    throw job_error({{}, 0, 0, "layup.plies"}, "one ply alone springs back fully, nothing holds its curve",
                    "give at least two plies, or a measured press.springback");
  return {springback_share(section_of(plies)),
          "computed from " + counted(long(plies.size()), "unbonded sheet")};
}

void refuse_crossings(const Panel& panel) {
  refuse_crossing(line_at(panel, panel.pressed, 0, "inner face"), "inner face");
  refuse_crossing(line_at(panel, panel.pressed, panel.thickness, "outer face"), "outer face");
}

}  // namespace

Panel make_panel(const Job& job) {
  const std::vector<Ply> plies = stacked(job.layup);
  const double thickness = plies.back().to;
  const double neutral = neutral_height(section_of(plies));
  const double described = job.panel.face == Face::inner   ? 0
                           : job.panel.face == Face::outer ? thickness
                                                           : thickness / 2;
  const Springback springback = springback_of(job.press.springback, plies, neutral - described);
  if (springback.share >= 1)
    throw job_error({{}, 0, 0, "press.springback"},
                    "a share of " + number(springback.share) + " leaves no curve", "give a share below 1");
  // Both faces of the released panel must exist before its neutral line is bent further.
  offset(job.panel.profile, -described, "inner face");
  offset(job.panel.profile, thickness - described, "outer face");
  const Profile released = offset(job.panel.profile, neutral - described, "neutral line");
  const Profile pressed =
      levelled(extended(compensated(released, springback.share), job.panel.trim, job.panel.trim));
  Panel panel{job.panel.width,
              job.panel.trim,
              job.panel.count,
              job.panel.face,
              thickness,
              job.layup.glue_line,
              job.layup.cover,
              job.layup.cover_stock,
              job.layup.glue,
              neutral,
              plies,
              springback,
              job.panel.profile,
              pressed};
  refuse_crossings(panel);
  return panel;
}

}  // namespace lamwright
