// Rows of the trade tables as values that mechanics and checks calculate with. MPa, kg/m3, mm.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/mechanics/bend_limit.hpp"
#include "kernel/mechanics/laminate.hpp"
#include "kernel/panel/trade.hpp"
#include "kernel/profile/vector.hpp"

namespace lamwright {

// A timber of the plies.
struct Timber {
  std::string name, label, source;
  Orthotropic elastic;
  double strength = 0;  // modulus of rupture along the fibres
  std::optional<double> strength_across;
  double density = 0;
  double structural_ratio = 0;  // least R / t of the structural rule
};
Timber timber_of(const TradeRow& row);

// A sheet board: formers, covers, sheathing, plies. Bending moduli along and across the face grain; `crush`
// square to its face.
struct Board {
  std::string name, label, kind, source;
  double nominal = 0, thickness = 0;
  double along = 0, across = 0;
  double strength = 0;
  double crush = 0;
  double density = 0;
  int uses = 0;                                     // pressings that a former of it stands
  std::optional<double> least_along, least_across;  // radii, face grain round the curve and along the width
  std::vector<double> veneers;                      // faces along the face grain, then across by turns
  std::string veneer_timber;
  Vec2 sheet{0, 0};  // length and width of a whole one, face grain along its length
  bool plywood() const { return kind == "plywood"; }
};
Board board_of(const TradeRow& row);

// A strength class of structural timber.
struct StrengthClass {
  std::string name, source;
  double bending = 0, shear = 0, crush = 0;  // characteristic: f_m, f_v, f_c,90
  double modulus = 0, modulus_across = 0;    // means
  double density_k = 0, density = 0;         // characteristic, mean
};
StrengthClass class_of(const TradeRow& row);

struct Glue {
  std::string name, label, kind, source;
  double pressure_low = 0, pressure_high = 0;
  double spread = 0;                       // g/m2 of one line, all faces together
  int faces = 1;                           // of each line that are spread
  double open = 0, closed = 0, press = 0;  // minutes
  double cure = 0;                         // hours
  double line = 0;                         // thickness
  double least_temperature = 0;            // degrees C
  bool waterproof = false, creeps = false, gap_filling = false;
};
Glue glue_of(const TradeRow& row);

// What the workshop pays, from its own data.
struct Price {
  std::string name;  // of what is bought: "plywood-18", "D40 46 x 90"
  double price = 0;
  std::string per;  // "sheet", "m", "m2", "piece", "kg"
  std::string currency;
};
Price price_of(const TradeRow& row);

// Least radii of a kind of plywood ("construction", "aircraft"), by thickness.
struct PlywoodBends {
  std::string source;
  std::vector<PlywoodBend> along, across;  // face grain round the curve, along the width
};
PlywoodBends plywood_bends(const TradeTables& trade, const std::string& kind);

}  // namespace lamwright
