#include "kernel/check/bends.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// A kind of sheet and the heights between which it lies, above the blank's inner face; of several alike the
// outermost faces on either side.
struct Sheet {
  std::string id, name;
  BendRule rule;
  double low = 0, high = 0;
};

bool alike(const PlySpec& a, const PlySpec& b) {
  return a.bend.least == b.bend.least && a.bend.least_basis == b.bend.least_basis && a.timber == b.timber &&
         std::abs(a.thickness - b.thickness) < kAtLeast && std::abs(a.grain - b.grain) < kTangent;
}

std::vector<Sheet> plies(const Job& job, const Panel& panel) {
  std::vector<Sheet> out;
  std::vector<std::size_t> firsts;
  for (std::size_t i = 0; i < job.layup.plies.size(); ++i) {
    const PlySpec& spec = job.layup.plies[i];
    const Ply& ply = panel.plies[i];
    const auto same = std::find_if(firsts.begin(), firsts.end(),
                                   [&](std::size_t k) { return alike(job.layup.plies[k], spec); });
    if (same != firsts.end()) {
      Sheet& sheet = out[std::size_t(same - firsts.begin())];
      sheet.high = ply.to;
      continue;
    }
    firsts.push_back(i);
    out.push_back({"ply-" + std::to_string(i + 1),
                   "ply " + std::to_string(i + 1) + ", " + spec.timber + " " + number(spec.thickness, 2),
                   spec.bend, ply.from, ply.to});
  }
  return out;
}

std::vector<Sheet> sheets(const Job& job, const PressPlan& plan) {
  const Panel& panel = plan.panel;
  std::vector<Sheet> out = plies(job, panel);
  if (panel.cover > 0)
    out.push_back({"cover", "cover sheet " + number(panel.cover, 2), job.layup.cover_bend, -panel.cover,
                   panel.thickness + panel.cover});
  double height = -panel.cover - job.caul.thickness;
  for (std::size_t i = 0; i < job.caul.sheathing_bends.size(); ++i) {
    const BendRule& rule = job.caul.sheathing_bends[i];
    // An upper mould's sheets lie as far above the pack.
    const double top = plan.sections.front().upper ? panel.thickness - height : height + rule.thickness;
    out.push_back(
        {"sheathing-" + std::to_string(i + 1), "sheathing " + number(rule.thickness, 2), rule, height, top});
    height += rule.thickness;
  }
  return out;
}

// Radius of the concave face of the innermost of those sheets in a bend of the neutral line.
double inside_radius(const Panel& panel, const Sheet& sheet, double curvature) {
  const double radius = 1 / std::abs(curvature);
  return curvature > 0 ? radius + sheet.low - panel.neutral_height
                       : radius - (sheet.high - panel.neutral_height);
}

// Thinner sheets are not sold. Common practice, no source.
constexpr double kThinnest = 0.5;

std::string thinner(const std::optional<double>& thickness) {
  if (!thickness || *thickness < kThinnest) return "Use a sheet that bends further, or raise the radius";
  return "Use sheets at most " + number(rounded_down(*thickness, 1), 1) + " thick here";
}

// For a plywood or bending plywood that bends well the other way.
std::string turned(const BendRule& rule, double radius) {
  if (!rule.turned || radius < *rule.turned) return {};
  return " Or turn its grain by a quarter: bent that way it stands R " + number(*rule.turned, 0) + ".";
}

std::string more(double radius) { return number(std::ceil(radius - kAtLeast), 0); }

constexpr double kHardlyBent = 240;  // R/t, EN 1995-1-1 6.4.3

Finding bent(const Sheet& sheet, double radius, const std::string& bend, std::size_t i) {
  const BendRule& rule = sheet.rule;
  Finding out{
      "bend-" + std::to_string(i + 1) + "-" + sheet.id,
      "Inside radius of " + sheet.name,
      radius,
      std::max(rule.least.value_or(0), rule.structural.value_or(0)),
      "mm",
      Verdict::pass,
      bend,
      rule.structural && *rule.structural > rule.least.value_or(0) ? rule.structural_basis : rule.least_basis,
      "",
      Bound::at_least};
  if (rule.least && radius < *rule.least - kAtLeast) {
    out.verdict = Verdict::fail;
    out.limit = *rule.least;
    out.basis = rule.least_basis;
    out.advice = "It cracks: a radius of " + more(*rule.least) + " or more. " +
                 thinner(rule.thickness_for(radius)) +
                 ", or state the maker's own least radius (maker_radius)." + turned(rule, radius);
  } else if (!rule.least && !rule.structural) {
    // Bent so little that even structural laminations keep all their strength.
    const bool hardly = radius >= kHardlyBent * rule.thickness;
    out.limit = hardly ? kHardlyBent * rule.thickness : std::numeric_limits<double>::quiet_NaN();
    out.basis = rule.unknown + (hardly ? "; R/t is above 240, EN 1995-1-1 6.4.3" : "");
    if (hardly) return out;
    out.verdict = Verdict::caution;
    out.advice = "There is " + rule.unknown +
                 ": bend a trial piece, or state the maker's least radius (maker_radius).";
  } else if (rule.structural && radius < *rule.structural - kAtLeast) {
    out.verdict = Verdict::caution;
    out.limit = *rule.structural;
    out.basis = rule.structural_basis;
    out.advice =
        "R/t is " + number(radius / rule.thickness, 0) +
        ": it bends, but is stressed more than structural laminations may be" +
        (rule.own_ratio ? std::string(". ")
                        : " (EN 1995-1-1 counts " + number(100 * bending_factor(radius / rule.thickness), 0) +
                              " % of their bending strength). ") +
        thinner(rule.calm_thickness_for(radius)) + " if the panel carries load.";
  }
  return out;
}

}  // namespace

std::vector<Finding> bend_findings(const Job& job, const PressPlan& plan) {
  std::vector<Finding> out;
  const std::vector<Sheet> all = sheets(job, plan);
  std::size_t bends = 0;
  for (std::size_t i = 0; i < plan.neutral.runs().size(); ++i) {
    const Run& run = plan.neutral.runs()[i];
    if (run.straight()) continue;
    for (const Sheet& sheet : all) {
      Finding finding =
          bent(sheet, inside_radius(plan.panel, sheet, run.curvature), run_name(plan.neutral, i), bends);
      out.push_back(std::move(finding));
    }
    ++bends;
  }
  return out;
}

}  // namespace lamwright
