#include "kernel/panel/bend_rule.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr double kEurocodeRatio = 240;

// The bending modulus of the strength tables is below E along the grain, for it counts the shear deflection
// of the tests: E = 1.10 x that modulus (Wood Handbook FPL-GTR-282, p. 5-2). Strength comes from the same
// tests.
constexpr double kOverBending = 1.1;

bool across_grain(double grain) { return std::abs(std::sin(grain)) >= std::sin(kPi / 4) - 1e-9; }

// The rules for structural laminations; they know sheets with the fibres along the curve only.
void add_structural(BendRule& rule, double nds, std::optional<double> own) {
  if (own) {
    rule.structural = *own * rule.thickness;
    rule.own_ratio = true;
    rule.structural_basis = "the job's own least R/t of " + number(*own) + " (layup.bend_ratio)";
  } else if (nds >= kEurocodeRatio) {
    rule.structural = nds * rule.thickness;
    rule.structural_basis = "NDS 5.3.8: t/R at most 1/" + number(nds);
  } else {
    rule.structural = kEurocodeRatio * rule.thickness;
    rule.structural_basis =
        "EN 1995-1-1 6.4.3: R/t below 240 costs strength (NDS 5.3.8: R/t at least " + number(nds) + ")";
  }
}

// Aircraft plywood up to its greatest thickness, construction plywood above.
std::vector<PlywoodBend> plywood_table(const TradeTables& trade, bool across) {
  const PlywoodBends thin = plywood_bends(trade, "aircraft"), thick = plywood_bends(trade, "construction");
  std::vector<PlywoodBend> table = across ? thin.across : thin.along;
  double reach = 0;
  for (const PlywoodBend& row : table) reach = std::max(reach, row.thickness);
  for (const PlywoodBend& row : across ? thick.across : thick.along)
    if (row.thickness > reach) table.push_back(row);
  return table;
}

void set_maker(BendRule& rule, double radius) {
  rule.least = radius;
  rule.least_basis = "maker's figure, R " + number(radius);
}

}  // namespace

std::optional<double> BendRule::thickness_for(double radius) const {
  if (!least) return std::nullopt;
  if (table.empty()) return thickness * radius / *least;
  // The table's radii grow with the thickness.
  double low = 0, high = 100;
  for (int step = 0; step < 60; ++step) {
    const double middle = (low + high) / 2;
    (plywood_radius(table, middle).value_or(INFINITY) <= radius ? low : high) = middle;
  }
  return low;
}

std::optional<double> BendRule::calm_thickness_for(double radius) const {
  const auto hard = thickness_for(radius);
  if (!structural) return hard;
  const double soft = thickness * radius / *structural;
  return hard ? std::min(*hard, soft) : soft;
}

BendRule timber_rule(const Timber& timber, double thickness, double grain, std::optional<double> maker,
                     std::optional<double> ratio) {
  BendRule rule;
  rule.thickness = thickness;
  if (maker) set_maker(rule, *maker);
  if (across_grain(grain)) {
    if (!maker && timber.strength_across) {
      const double least = elastic_ratio(timber.elastic.across, *timber.strength_across);
      rule.least = least * thickness;
      rule.least_basis = "elastic limit across the grain, R/t = E/(2 f) = " + number(least, 1);
    } else if (!maker) {
      rule.unknown = "no figure for bending " + timber.label + " across its grain";
    }
    if (ratio) add_structural(rule, *ratio, ratio);
    return rule;
  }
  if (!maker) {
    const double least = elastic_ratio(timber.elastic.along / kOverBending, timber.strength);
    rule.least = least * thickness;
    rule.least_basis = "elastic limit, R/t = E/(2 f_m) = " + number(least, 1) +
                       ", E of bending; E and f_m: " + timber.source;
  }
  add_structural(rule, timber.structural_ratio, ratio);
  return rule;
}

BendRule board_rule(const Board& board, double thickness, double grain, std::optional<double> maker,
                    std::optional<double> ratio, const TradeTables& trade) {
  BendRule rule;
  rule.thickness = thickness;
  const bool across = across_grain(grain);
  const auto& own = across ? board.least_across : board.least_along;
  if (maker) {
    set_maker(rule, *maker);
  } else if (own) {
    rule.least = *own * thickness / board.thickness;
    rule.least_basis = board.label + ": " + board.source;
    if (const auto& other = across ? board.least_along : board.least_across)
      rule.turned = *other * thickness / board.thickness;
  } else if (board.plywood()) {
    rule.table = plywood_table(trade, across);
    rule.least = plywood_radius(rule.table, thickness);
    rule.turned = plywood_radius(plywood_table(trade, !across), thickness);
    rule.least_basis = "thin sheets: " + plywood_bends(trade, "aircraft").source +
                       "; thicker: " + plywood_bends(trade, "construction").source;
  } else {
    const double least = elastic_ratio(across ? board.across : board.along, board.strength);
    rule.least = least * thickness;
    if (const auto& other = across ? board.least_along : board.least_across)
      rule.turned = *other * thickness / board.thickness;
    rule.least_basis =
        "elastic limit, R/t = E/(2 f_m) = " + number(least, 1) + "; E and f_m: " + board.source;
  }
  if (ratio) add_structural(rule, *ratio, ratio);
  return rule;
}

}  // namespace lamwright
