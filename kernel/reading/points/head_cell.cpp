#include "kernel/reading/points/head_cell.hpp"

#include <algorithm>

#include "kernel/reading/points/lines.hpp"
#include "shared/error.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

std::optional<LengthUnit> unit_of(std::string_view small) {
  if (small == "\"" || small == "\u2033") return LengthUnit::inch;
  if (small == "'" || small == "\u2032") return LengthUnit::foot;
  LengthUnit unit{};
  return unit_from(small, unit) ? std::optional(unit) : std::nullopt;
}

// Where the bracket that ends the text opens.
std::optional<std::size_t> bracket(std::string_view text) {
  const char open = text.ends_with(']') ? '[' : text.ends_with(')') ? '(' : '\0';
  const auto at = open == '\0' ? std::string_view::npos : text.rfind(open);
  return at == std::string_view::npos ? std::nullopt : std::optional(at);
}

std::string_view inside(std::string_view text, std::size_t open) {
  return trimmed(text.substr(open + 1, text.size() - open - 2));
}

HeadCell with_bracket(std::string_view text, std::size_t open, std::string_view cell) {
  const auto unit = unit_of(inside(text, open));
  if (!unit)
    throw job_error({}, shown(cell) + " has brackets that hold no unit", "use mm, cm, m, in or ft there");
  return {std::string(trimmed(text.substr(0, open))), unit};
}

// "x in mm" without the unit is "x in".
std::string_view without_in(std::string_view name) {
  if (name.ends_with(" in")) name.remove_suffix(3);
  return trimmed(name);
}

}  // namespace

HeadCell head_cell(std::string_view cell) {
  const std::string small = small_letters(trimmed(cell));
  const std::string_view text = small;
  if (const auto open = bracket(text)) return with_bracket(text, *open, cell);
  if (const auto unit = unit_of(text)) return {{}, unit};
  const auto last = text.find_last_of(" _/-");
  if (last == std::string_view::npos) return {small, std::nullopt};
  const auto unit = unit_of(text.substr(last + 1));
  if (!unit) return {small, std::nullopt};
  return {std::string(without_in(trimmed(text.substr(0, last)))), unit};
}

std::optional<LengthUnit> lone_unit(std::string_view cell) {
  const std::string small = small_letters(trimmed(cell));
  const auto open = bracket(small);
  return unit_of(open == 0 ? inside(small, 0) : std::string_view(small));
}

std::vector<std::string> with_units_joined(const std::vector<std::string>& cells) {
  std::vector<std::string> out;
  for (const std::string& cell : cells)
    if (!out.empty() && lone_unit(cell))
      out.back() += " " + cell;
    else
      out.push_back(cell);
  return out;
}

std::string name_of(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::mm:
      return "mm";
    case LengthUnit::cm:
      return "cm";
    case LengthUnit::m:
      return "m";
    case LengthUnit::inch:
      return "in";
    case LengthUnit::foot:
      return "ft";
  }
  return {};
}

}  // namespace lamwright
