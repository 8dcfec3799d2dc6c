// How tight a sheet may be bent, and by whose word.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/panel/materials.hpp"

namespace lamwright {

// Radii are those of the sheet's inside (concave) face, mm. Below `least` it cracks; below `structural` it is
// bent tighter than the rules for structural laminations allow. `unknown` says why there is no `least`.
struct BendRule {
  double thickness = 0;              // of the sheet, mm
  std::optional<double> least;       // not given: nothing is known
  std::string least_basis;           // its source, with its figures
  std::optional<double> structural;  // not given: no rule knows such sheets
  std::string structural_basis;      // its source
  bool own_ratio = false;            // `structural` is the workshop's own rule
  std::optional<double> turned;      // `least` with the grain a quarter turn on, where a board's row knows it
  std::vector<PlywoodBend> table;    // where `least` comes from; empty: it grows with the thickness
  std::string unknown;               // empty where `least` is known

  // The largest thickness that a radius allows by `least`, and by both. Nothing without a limit.
  std::optional<double> thickness_for(double radius) const;
  std::optional<double> calm_thickness_for(double radius) const;  // by `least` and `structural`
};

// Of a veneer whose fibres run at `grain` (radians) to the curve: from 45 degrees on it counts as across.
// `maker` is the maker's least radius of this thickness; `ratio` the workshop's own least R / t in place of
// the structural rules.
BendRule timber_rule(const Timber& timber, double thickness, double grain, std::optional<double> maker,
                     std::optional<double> ratio);

// Of a sheet board with its face grain at `grain`; board rows that state no radius go by the tables of
// plywood bends (aircraft plywood up to its greatest thickness, construction plywood above), others by the
// elastic limit.
BendRule board_rule(const Board& board, double thickness, double grain, std::optional<double> maker,
                    std::optional<double> ratio, const TradeTables& trade);

}  // namespace lamwright
