#include "kernel/job/make_panel.hpp"

#include <algorithm>

#include "kernel/mechanics/springback.hpp"
#include "kernel/panel/layup_key.hpp"
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
                     height + spec.thickness, spec.density, spec.veneers});
    for (PlateLayer& veneer : plies.back().veneers) {
      veneer.from += height;
      veneer.to += height;
    }
    height += spec.thickness;
  }
  return plies;
}

double mass_per_area(const std::vector<Ply>& plies) {
  double sum = 0;
  for (const Ply& ply : plies) sum += ply.density * ply.thickness / 1000;  // kg/m3 x mm
  return sum;
}

constexpr std::size_t kMostNamed = 12;  // lay-ups of a notebook that a message lists

std::string named_fit(const std::string& layup, const std::string& glue) { return layup + ", " + glue; }

std::string lay_ups_of(const std::vector<NotebookEntry>& pieces) {
  const std::vector<NotebookFit> known = fits(pieces);
  std::string text;
  for (std::size_t i = 0; i < std::min(known.size(), kMostNamed); ++i)
    text += (i > 0 ? "; " : "") + named_fit(known[i].layup, known[i].glue);
  if (known.size() > kMostNamed) text += "; and " + std::to_string(known.size() - kMostNamed) + " more";
  return text.empty() ? "it holds no piece" : "it holds " + text;
}

Springback fitted(const SpringbackSpec& spec, const LayupSpec& layup, const std::vector<Ply>& plies) {
  const std::string key = layup_key(plies, layup.glue_line);
  const auto found = fit(spec.pieces, key, layup.glue);
  if (!found)
    throw job_error({{}, 0, 0, "press.springback"},
                    spec.notebook + " has no piece of this lay-up (" + named_fit(key, layup.glue) + ")",
                    lay_ups_of(spec.pieces) + "; press a test piece and add it with lamwright notebook add");
  return {found->share, "shop notebook, " + fit_text(*found), found->spread, found->pieces};
}

// Radii of a test piece are of the described face; its neutral line lies `height` further out.
Springback springback_of(const Job& job, const std::vector<Ply>& plies, double height) {
  const SpringbackSpec& spec = job.press.springback;
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
    case SpringbackSpec::Kind::notebook:
      return fitted(spec, job.layup, plies);
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
  const Springback springback = springback_of(job, plies, neutral - described);
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
              pressed,
              loose_stiffness(section_of(plies)),
              bonded_stiffness(section_of(plies)),
              mass_per_area(plies)};
  refuse_crossings(panel);
  return panel;
}

}  // namespace lamwright
