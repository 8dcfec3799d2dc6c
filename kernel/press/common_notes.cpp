#include "kernel/press/common_notes.hpp"

#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"

namespace lamwright {

std::optional<RiseRule> rise_rule(const Job& job, const Panel& panel) {
  const auto& runs = panel.released.runs();
  if (runs.size() != 1 || runs[0].straight() || job.press.springback.kind != SpringbackSpec::Kind::computed)
    return std::nullopt;
  const double radius = 1 / std::abs(runs[0].curvature), half = std::abs(runs[0].turn()) / 2;
  // A chord has a rise of less than half a circle only.
  if (half >= std::acos(0.0)) return std::nullopt;
  const double chord = 2 * radius * std::sin(half), rise = radius * (1 - std::cos(half));
  const double form = rise / (1 - panel.springback.share);
  const double over = panel.face_height() - panel.neutral_height, sense = runs[0].curvature > 0 ? 1 : -1;
  const double neutral = (radius - sense * over) * (1 - panel.springback.share);
  return RiseRule{form, (chord * chord / 4 + form * form) / (2 * form), neutral + sense * over};
}

std::vector<std::string> common_notes(const Job& job, const Panel& panel) {
  std::vector<std::string> out;
  const Glue& glue = job.layup.glue_row;
  if (glue.waterproof)
    out.push_back(
        glue.label +
        " does not wash off: tape or wax cauls, covers and pins, or the press is glued to the panel.");
  if (const auto rule = rise_rule(job, panel); rule && panel.springback.share > 0)
    out.push_back("Springback by curvature: the form's face is R " + number(rule->by_curvature, 1) +
                  ". The trade's rise rule would make it R " + number(rule->radius, 1) + " (rise " +
                  number(rule->rise, 1) + "). Both are estimates: press a test piece.");
  return out;
}

}  // namespace lamwright
