#include <algorithm>

#include "cli/command.hpp"
#include "cli/files.hpp"
#include "cli/job_run.hpp"
#include "cli/options.hpp"
#include "cli/plugins.hpp"
#include "cli/terminal.hpp"
#include "kernel/job/start.hpp"
#include "kernel/panel/trade.hpp"
#include "kernel/panel/trade_fields.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

using Rows = std::vector<std::vector<std::string>>;

Rows method_rows(const Registry& registry) {
  Rows rows;
  for (const auto& method : registry.methods()) rows.push_back({method->name(), method->summary()});
  return rows;
}

// STEP and PDF lie in libraries of their own that are not loaded for a list.
Rows exporter_rows(const Registry& registry) {
  Rows rows;
  for (const Module& module : modules()) rows.push_back({module.name, module.summary});
  for (const auto& exporter : registry.exporters()) rows.push_back({exporter->name(), exporter->summary()});
  return rows;
}

std::string list_text(const std::vector<double>& list) {
  std::string text;
  for (const double item : list) text += (text.empty() ? "" : ", ") + number(item, 4);
  return "[" + text + "]";
}

// Empty when the row does not have the field.
std::string value_text(const TradeRow& row, const TradeField& field) {
  const std::string unit = field.unit.empty() ? "" : " " + field.unit;
  if (const auto value = row.find(field.name))
    return field.type == FieldType::flag ? (*value != 0 ? "yes" : "no") : number(*value, 4) + unit;
  if (const auto list = row.lists.find(field.name); list != row.lists.end())
    return list_text(list->second) + unit;
  const auto text = row.texts.find(field.name);
  return text == row.texts.end() ? "" : text->second;
}

std::string figures(const std::string& table, const TradeRow& row) {
  std::string text;
  for (const TradeField& field : trade_fields(table)) {
    const std::string value = value_text(row, field);
    if (!value.empty() && field.name != "label" && field.name != "source")
      text += (text.empty() ? "" : ", ") + field.name + " " + value;
  }
  return text;
}

Rows trade_rows(const TradeTables& trade, const std::string& table) {
  Rows rows;
  for (const TradeRow& row : trade.table(table)) {
    rows.push_back({row.name, row.label});
    rows.push_back({"", figures(table, row)});
    rows.push_back({"", "source: " + row.source + (row.file.empty() ? "" : " (" + row.file + ")")});
  }
  return rows;
}

Rows field_rows(const TradeTables& trade) {
  Rows rows{{"table", "field", "a new row", "allowed", "meaning"}};
  for (const std::string& table : trade.table_names())
    for (const TradeField& field : trade_fields(table))
      rows.push_back(
          {table, field.name, field.required ? "needs it" : "may have it", allowed(field), field.meaning});
  return rows;
}

std::vector<std::string> known() {
  std::vector<std::string> names{"methods", "exporters", "keys", "fields"};
  for (const std::string& table : TradeTables().table_names()) names.push_back(table);
  return names;
}

std::string listing(const std::string& what, const TradeTables& trade, const po::variables_map& values) {
  if (what == "methods") return aligned(method_rows(registry_for(values)));
  if (what == "exporters") return aligned(exporter_rows(registry_for(values)));
  if (what == "keys") return keys_as_markdown();
  if (what == "fields") return aligned(field_rows(trade));
  return aligned(trade_rows(trade, what));
}

TradeTables with_files(const std::vector<std::string>& files, std::vector<Error>& faults) {
  TradeTables trade;
  for (const std::string& file : files) trade = trade.with(read_file(file), file, faults);
  return trade;
}

int run(const po::variables_map& values) {
  const std::vector<std::string> names = known();
  const std::string what = required(values, "what", "WHAT (" + listed(names) + ")");
  if (std::find(names.begin(), names.end(), what) == names.end())
    throw UsageError{"list " + what + " is unknown: " + listed(names)};
  std::vector<Error> faults;
  const TradeTables trade = with_files(data_files(values), faults);
  if (!faults.empty()) return tell(faults);
  print(listing(what, trade, values));
  return kDone;
}

}  // namespace

Command list_command() {
  return {"list",
          "Shows what is known: press methods, exporters, job-file keys, trade rows with their sources.",
          {{"what", "WHAT", Completes::words, known}},
          {data_option(), plugin_option()},
          run};
}

}  // namespace lamwright::cli
