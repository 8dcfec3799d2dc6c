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
  std::string name, label, source;        // of its row
  Orthotropic elastic;                    // in the plane of a sheet
  double strength = 0;                    // modulus of rupture along the fibres
  std::optional<double> strength_across;  // bending strength across the fibres; few rows know it
  double density = 0;                     // at 12 % moisture
  double structural_ratio = 0;            // least R / t of the structural rule
};
Timber timber_of(const TradeRow& row);  // a row of the timbers table

// A sheet board: formers, covers, sheathing, plies. Bending moduli along and across the face grain; `crush`
// square to its face.
struct Board {
  // Of its row; `kind` "plywood", "bending-plywood", "fibreboard" or "hardboard".
  std::string name, label, kind, source;
  double nominal = 0, thickness = 0;                // by name; as it usually measures
  double along = 0, across = 0;                     // along the long side where it has no grain
  double strength = 0;                              // bending strength
  double crush = 0;                                 // compression strength
  double density = 0;                               // of the whole sheet
  int uses = 0;                                     // pressings that a former of it stands
  std::optional<double> least_along, least_across;  // radii, face grain round the curve and along the width
  std::vector<double> veneers;                      // faces along the face grain, then across by turns
  std::string veneer_timber;                        // row of the timbers table; empty without veneers
  Vec2 sheet{0, 0};  // length and width of a whole one, face grain along its length
  bool plywood() const { return kind == "plywood"; }  // by `kind`: bending plywood is none
};
Board board_of(const TradeRow& row);  // a row of the boards table

// A strength class of structural timber.
struct StrengthClass {
  std::string name, source;                  // of its row: "D40"
  double bending = 0, shear = 0, crush = 0;  // characteristic: f_m, f_v, f_c,90
  double modulus = 0, modulus_across = 0;    // means
  double density_k = 0, density = 0;         // characteristic, mean
};
StrengthClass class_of(const TradeRow& row);  // a row of the classes table

// A glue as its maker tells of it; `press` at 20 degrees C.
struct Glue {
  std::string name, label, kind, source;       // of its row; `kind` its generic type, "pvac"
  double pressure_low = 0, pressure_high = 0;  // range for the pressure on a line
  double spread = 0;                           // g/m2 of one line, all faces together
  int faces = 1;                               // of each line that are spread
  double open = 0, closed = 0, press = 0;      // minutes
  double cure = 0;                             // hours
  double line = 0;                             // thickness
  double least_temperature = 0;                // degrees C
  // Of the cured line; creep under lasting stress.
  bool waterproof = false, creeps = false, gap_filling = false;
};
Glue glue_of(const TradeRow& row);  // a row of the glues table

// What the workshop pays, from its own data.
struct Price {
  std::string name;      // of what is bought: "plywood-18", "D40 46 x 90"
  double price = 0;      // of one unit
  std::string per;       // "sheet", "m", "m2", "piece", "kg"
  std::string currency;  // as the workshop writes it; may be empty
};
Price price_of(const TradeRow& row);  // a row of the prices table

// Least radii of a kind of plywood ("construction", "aircraft"), by thickness.
struct PlywoodBends {
  std::string source;                      // of all its rows
  std::vector<PlywoodBend> along, across;  // face grain round the curve, along the width
};
// By the bends table; empty for an unknown kind.
PlywoodBends plywood_bends(const TradeTables& trade, const std::string& kind);

}  // namespace lamwright
