#include "kernel/panel/trade_fields.hpp"

#include <map>

#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

using Fields = std::vector<TradeField>;

constexpr bool kNeeded = true, kOptional = false;

TradeField number_of(std::string name, double least, double most, std::string unit, std::string meaning,
                     bool required = kNeeded) {
  return {std::move(name), FieldType::number, required, least, most, std::move(unit), std::move(meaning)};
}
TradeField whole_of(std::string name, double least, double most, std::string meaning,
                    bool required = kNeeded) {
  return {std::move(name), FieldType::whole, required, least, most, "", std::move(meaning)};
}
TradeField flag_of(std::string name, std::string meaning, bool required = kNeeded) {
  return {std::move(name), FieldType::flag, required, 0, 1, "", std::move(meaning)};
}
TradeField text_of(std::string name, std::string meaning, bool required = kNeeded,
                   std::vector<std::string> choices = {}) {
  return {std::move(name), FieldType::text, required, 0, 0, "", std::move(meaning), std::move(choices)};
}
TradeField list_of(std::string name, double least, double most, std::string unit, std::string meaning,
                   bool required, std::size_t fewest, std::size_t longest) {
  return {std::move(name), FieldType::list,    required, least,  most,
          std::move(unit), std::move(meaning), {},       fewest, longest};
}

Fields timber_fields() {
  return {
      number_of("E_along", 100, 50000, "MPa", "modulus of elasticity along the fibres"),
      number_of("E_across", 5, 20000, "MPa", "across them, in the plane of the sheet"),
      number_of("shear", 5, 10000, "MPa", "modulus of rigidity in the plane of the sheet"),
      number_of("poisson", 0, 0.9, "", "Poisson's ratio: strain across from stress along"),
      number_of("strength", 1, 500, "MPa", "modulus of rupture, along the fibres"),
      number_of("strength_across", 0.1, 200, "MPa", "bending strength across them", kOptional),
      number_of("crush", 0.1, 200, "MPa", "compression across the fibres", kOptional),
      number_of("density", 50, 1500, "kg/m3", "at 12 % moisture"),
      flag_of("hardwood", "of a broad-leaved tree"),
      number_of("structural_ratio", 1, 2000, "", "least R/t of glued structural laminations"),
  };
}

Fields bend_fields() {
  return {
      text_of("kind", "kind of plywood", kNeeded, {"construction", "aircraft"}),
      number_of("thickness", 0.1, 200, "mm", "of the sheet"),
      whole_of("plies", 3, 99, "plies of the sheet", kOptional),
      number_of("along", 1, 100000, "mm", "least radius, face grain round the curve"),
      number_of("across", 1, 100000, "mm", "least radius, face grain along the width"),
  };
}

Fields board_fields() {
  return {
      text_of("kind", "kind of board", kNeeded, {"plywood", "bending-plywood", "fibreboard", "hardboard"}),
      number_of("nominal", 0.1, 200, "mm", "thickness by name"),
      number_of("thickness", 0.1, 200, "mm", "usual actual thickness"),
      number_of("E_along", 5, 50000, "MPa", "bending modulus along the face grain or long side"),
      number_of("E_across", 5, 50000, "MPa", "bending modulus across it"),
      number_of("strength", 0.1, 500, "MPa", "bending strength"),
      number_of("crush", 0.01, 200, "MPa", "compression square to the face"),
      number_of("density", 20, 2000, "kg/m3", "of the sheet"),
      list_of("sheet", 50, 20000, "mm", "length and width of a whole sheet", kNeeded, 2, 2),
      whole_of("uses", 1, 10000, "pressings that a former of it stands"),
      number_of("least_along", 1, 100000, "mm", "maker's least radius, face grain round the curve",
                kOptional),
      number_of("least_across", 1, 100000, "mm", "maker's least radius, face grain along the width",
                kOptional),
      list_of("veneers", 0.05, 50, "mm", "from face to face, first along the face grain, then by turns",
              kOptional, 2, 99),
      text_of("veneer_timber", "row of the timbers table", kOptional),
  };
}

Fields price_fields() {
  return {
      number_of("price", 0, 1e6, "", "of one unit"),
      text_of("per", "unit that is priced", kNeeded, {"sheet", "m", "m2", "piece", "kg"}),
      text_of("currency", "as EUR", kOptional),
  };
}

Fields class_fields() {
  return {
      flag_of("hardwood", "of broad-leaved trees"),
      number_of("f_m", 0.1, 500, "MPa", "characteristic bending strength"),
      number_of("f_t0", 0.1, 500, "MPa", "characteristic tension along the grain"),
      number_of("f_c0", 0.1, 500, "MPa", "characteristic compression along the grain"),
      number_of("f_c90", 0.1, 200, "MPa", "characteristic compression across the grain"),
      number_of("f_v", 0.1, 200, "MPa", "characteristic shear strength"),
      number_of("E_mean", 100, 50000, "MPa", "mean modulus along the grain"),
      number_of("E_05", 100, 50000, "MPa", "5 % modulus along the grain"),
      number_of("E_90", 5, 20000, "MPa", "mean modulus across the grain"),
      number_of("G", 5, 10000, "MPa", "mean shear modulus"),
      number_of("density_k", 50, 1500, "kg/m3", "characteristic density"),
      number_of("density_mean", 50, 1500, "kg/m3", "mean density"),
  };
}

Fields glue_fields() {
  return {
      text_of("class", "durability class"),
      text_of("kind", "generic type", kNeeded,
              {"pvac", "urea", "melamine", "resorcinol", "polyurethane", "epoxy", "casein", "hide", "other"}),
      number_of("pressure_low", 0, 10, "MPa", "least pressure on the line"),
      number_of("pressure_high", 0.001, 10, "MPa", "greatest pressure on the line"),
      number_of("spread", 1, 2000, "g/m2", "of one line, all its faces together"),
      whole_of("faces", 1, 2, "faces of a line that are spread"),
      number_of("open_time", 0.1, 1440, "min", "from the first spread to laying together"),
      number_of("closed_time", 0.1, 1440, "min", "from there to full pressure"),
      number_of("press_time", 0.1, 20160, "min", "under pressure at 20 C, bent parts"),
      number_of("cure_time", 0, 1000, "h", "until machining and loading"),
      number_of("least_temperature", -20, 100, "C", "of room, wood and glue"),
      number_of("glue_line", 0, 2, "mm", "thickness of one line", kOptional),
      flag_of("waterproof", "bonds to the cauls and does not wash off"),
      flag_of("creeps", "gives way slowly under lasting stress"),
      flag_of("gap_filling", "bonds over gaps"),
  };
}

Fields caul_fields() {
  return {
      number_of("thickness", 0.5, 200, "mm", "of the slats"),
      number_of("pitch", 1, 1000, "mm", "from slat to slat", kOptional),
      number_of("coverage", 0.05, 1, "", "slat width over pitch", kOptional),
      text_of("class", "of the slats, row of the classes table", kOptional),
      number_of("EI", 1, 1e12, "N mm2 per mm", "bending stiffness along the width, per mm of girth",
                kOptional),
      number_of("least_crown_radius", 1, 100000, "mm", "that it follows", kOptional),
      number_of("least_hollow_radius", 1, 100000, "mm", "that it follows", kOptional),
      list_of("slats", 50, 20000, "mm", "lengths kept in stock", kOptional, 1, 12),
  };
}

Fields strap_fields() {
  return {
      number_of("width", 5, 300, "mm", "of the strap"),
      number_of("thickness", 0.2, 20, "mm", "of the strap"),
      number_of("ratchet", 10, 2000, "mm", "room of the ratchet along the strap"),
      number_of("ratchet_width", 5, 500, "mm", "room of the ratchet across the strap", kOptional),
      number_of("rating", 10, 1e6, "N", "lashing capacity in straight pull (LC)"),
      number_of("tension", 1, 1e6, "N", "left after tightening by hand (STF)"),
      number_of("roller", 5, 500, "mm", "diameter of the guide roller for it"),
      number_of("elongation", 0, 50, "%", "at the rating", kOptional),
  };
}

Fields fastener_fields() {
  return {
      number_of("diameter", 0.5, 100, "mm", "of the shank"),
      number_of("length", 1, 3000, "mm", "under the head"),
      number_of("yield", 1, 3000, "MPa", "yield strength of the steel", kOptional),
  };
}

Fields with_label_and_source(Fields fields) {
  fields.insert(fields.begin(), text_of("label", "name for people", kOptional));
  fields.push_back(text_of("source", "where the figures come from", kOptional));
  return fields;
}

std::map<std::string, Fields> all_fields() {
  std::map<std::string, Fields> tables{
      {"timbers", timber_fields()}, {"bends", bend_fields()},         {"boards", board_fields()},
      {"classes", class_fields()},  {"glues", glue_fields()},         {"cauls", caul_fields()},
      {"straps", strap_fields()},   {"fasteners", fastener_fields()}, {"prices", price_fields()}};
  for (auto& entry : tables) entry.second = with_label_and_source(std::move(entry.second));
  return tables;
}

std::string range_of(const TradeField& field) {
  return number(field.least, 6) + " to " + number(field.most, 6) +
         (field.unit.empty() ? "" : " " + field.unit);
}

}  // namespace

const std::vector<TradeField>& trade_fields(const std::string& table) {
  static const std::map<std::string, Fields> tables = all_fields();
  static const Fields none;
  const auto found = tables.find(table);
  return found == tables.end() ? none : found->second;
}

const TradeField* trade_field(const std::string& table, const std::string& name) {
  for (const TradeField& field : trade_fields(table))
    if (field.name == name) return &field;
  return nullptr;
}

std::vector<std::string> trade_field_names(const std::string& table) {
  std::vector<std::string> names;
  for (const TradeField& field : trade_fields(table)) names.push_back(field.name);
  return names;
}

std::string allowed(const TradeField& field) {
  switch (field.type) {
    case FieldType::number:
      return range_of(field);
    case FieldType::whole:
      return "a whole number from " + range_of(field);
    case FieldType::flag:
      return "true or false";
    case FieldType::text:
      return field.choices.empty() ? "a text in quotes" : listed(field.choices);
    case FieldType::list:
      return "a list of " +
             (field.fewest == field.longest
                  ? std::to_string(field.fewest)
                  : std::to_string(field.fewest) + " to " + std::to_string(field.longest)) +
             ", each " + range_of(field);
  }
  return {};
}

}  // namespace lamwright
