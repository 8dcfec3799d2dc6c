#include "kernel/panel/materials.hpp"

namespace lamwright {
namespace {

std::string text(const TradeRow& row, const std::string& field) {
  const auto found = row.texts.find(field);
  return found == row.texts.end() ? std::string() : found->second;
}

bool flag(const TradeRow& row, const std::string& field) { return row.find(field).value_or(0) != 0; }

}  // namespace

Timber timber_of(const TradeRow& row) {
  return {row.name,
          row.label,
          row.source,
          {row.number("E_along"), row.number("E_across"), row.number("shear"), row.number("poisson")},
          row.number("strength"),
          row.find("strength_across"),
          row.number("density"),
          row.number("structural_ratio")};
}

Board board_of(const TradeRow& row) {
  const auto veneers = row.lists.find("veneers");
  return {row.name,
          row.label,
          text(row, "kind"),
          row.source,
          row.number("nominal"),
          row.number("thickness"),
          row.number("E_along"),
          row.number("E_across"),
          row.number("strength"),
          row.number("crush"),
          row.number("density"),
          int(row.number("uses")),
          row.find("least_along"),
          row.find("least_across"),
          veneers == row.lists.end() ? std::vector<double>() : veneers->second,
          text(row, "veneer_timber"),
          {row.lists.at("sheet")[0], row.lists.at("sheet")[1]}};
}

Price price_of(const TradeRow& row) {
  return {row.name, row.number("price"), text(row, "per"), text(row, "currency")};
}

StrengthClass class_of(const TradeRow& row) {
  return {row.name,
          row.source,
          row.number("f_m"),
          row.number("f_v"),
          row.number("f_c90"),
          row.number("E_mean"),
          row.number("E_90"),
          row.number("density_k"),
          row.number("density_mean")};
}

Glue glue_of(const TradeRow& row) {
  return {row.name,
          row.label,
          text(row, "kind"),
          row.source,
          row.number("pressure_low"),
          row.number("pressure_high"),
          row.number("spread"),
          int(row.number("faces")),
          row.number("open_time"),
          row.number("closed_time"),
          row.number("press_time"),
          row.number("cure_time"),
          row.find("glue_line").value_or(0),
          row.number("least_temperature"),
          flag(row, "waterproof"),
          flag(row, "creeps"),
          flag(row, "gap_filling")};
}

PlywoodBends plywood_bends(const TradeTables& trade, const std::string& kind) {
  PlywoodBends out;
  for (const TradeRow& row : trade.table("bends")) {
    if (text(row, "kind") != kind) continue;
    out.source = row.source;
    out.along.push_back({row.number("thickness"), row.number("along")});
    out.across.push_back({row.number("thickness"), row.number("across")});
  }
  return out;
}

}  // namespace lamwright
