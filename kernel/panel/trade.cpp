#include "kernel/panel/trade.hpp"

#include <algorithm>

#include "shared/error.hpp"
#include "shared/text.hpp"
#include "shared/toml.hpp"
#include "shared/trade_tables.hpp"

namespace lamwright {
namespace {

TradeRow row_from(const std::string& name, const toml::table& table) {
  TradeRow row{name, name, "", {}, {}, {}};
  for (const auto& [key, node] : table) {
    const std::string field(key.str());
    if (node.is_number())
      row.numbers[field] = *node.value<double>();
    else if (node.is_boolean())
      row.numbers[field] = *node.value<bool>() ? 1 : 0;
    else if (node.is_string())
      row.texts[field] = *node.value<std::string>();
    else if (const auto* list = node.as_array())
      for (const auto& item : *list) row.lists[field].push_back(item.value_or(0.0));
  }
  if (const auto label = row.texts.find("label"); label != row.texts.end()) row.label = label->second;
  if (const auto source = row.texts.find("source"); source != row.texts.end()) row.source = source->second;
  return row;
}

Place place_of(const toml::node& node, const std::string& file, const std::string& key) {
  return {file, int(node.source().begin.line), int(node.source().begin.column), key};
}

}  // namespace

std::optional<double> TradeRow::find(const std::string& field) const {
  const auto found = numbers.find(field);
  return found == numbers.end() ? std::nullopt : std::optional(found->second);
}

double TradeRow::number(const std::string& field) const {
  const auto value = find(field);
  if (!value)
    throw job_error({{}, 0, 0, name}, "the trade row lacks \"" + field + "\"",
                    "add it to the row in your data file");
  return *value;
}

TradeTables::TradeTables() {
  for (const TradeText& text : trade_texts()) {
    auto& rows = tables_[std::string(text.name)];
    for (const auto& [key, node] : toml::parse(text.text))
      if (const auto* table = node.as_table()) rows.push_back(row_from(std::string(key.str()), *table));
  }
}

TradeTables TradeTables::with(std::string_view text, const std::string& file) const {
  TradeTables out = *this;
  toml::table parsed;
  try {
    parsed = toml::parse(text);
  } catch (const toml::parse_error& fault) {
    throw job_error({file, int(fault.source().begin.line), int(fault.source().begin.column), {}},
                    std::string(fault.description()), "mend the line");
  }
  for (const auto& [key, node] : parsed) {
    const std::string name(key.str());
    const auto found = out.tables_.find(name);
    if (found == out.tables_.end() || !node.is_table())
      throw job_error(place_of(node, file, name), "is not a trade table",
                      "tables are " + listed(table_names()));
    for (const auto& [row_key, row_node] : *node.as_table()) {
      const std::string row_name(row_key.str());
      if (!row_node.is_table())
        throw job_error(place_of(row_node, file, name + "." + row_name), "is not a row",
                        "write [" + name + "." + row_name + "]");
      TradeRow row = row_from(row_name, *row_node.as_table());
      if (row.source.empty()) row.source = "own data";
      auto& rows = found->second;
      const auto same =
          std::find_if(rows.begin(), rows.end(), [&](const TradeRow& r) { return r.name == row_name; });
      if (same == rows.end())
        rows.push_back(std::move(row));
      else
        *same = std::move(row);
    }
  }
  return out;
}

const std::vector<TradeRow>& TradeTables::table(const std::string& name) const {
  const auto found = tables_.find(name);
  ensure(found != tables_.end(), "the trade table exists");
  return found->second;
}

std::vector<std::string> TradeTables::table_names() const {
  std::vector<std::string> names;
  for (const auto& entry : tables_) names.push_back(entry.first);
  return names;
}

const TradeRow* TradeTables::find(const std::string& table_name, const std::string& row) const {
  for (const TradeRow& candidate : table(table_name))
    if (candidate.name == row) return &candidate;
  return nullptr;
}

std::vector<std::string> TradeTables::row_names(const std::string& table_name) const {
  std::vector<std::string> names;
  for (const TradeRow& row : table(table_name)) names.push_back(row.name);
  return names;
}

}  // namespace lamwright
