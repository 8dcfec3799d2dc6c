#include <algorithm>

#include "cli/command.hpp"
#include "cli/options.hpp"
#include "cli/plugins.hpp"
#include "cli/terminal.hpp"
#include "kernel/job/start.hpp"
#include "kernel/panel/trade.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

using Rows = std::vector<std::vector<std::string>>;

Rows method_rows() {
  Registry registry;
  add_press_methods(registry);
  Rows rows;
  for (const auto& method : registry.methods()) rows.push_back({method->name(), method->summary()});
  return rows;
}

// STEP lies in a library of its own that is not loaded for a list.
Rows exporter_rows() {
  Registry registry;
  add_exporters(registry);
  add_summary(registry);
  Rows rows{{"step", "solids of the press and of each part (STEP AP214 or AP242)"}};
  for (const auto& exporter : registry.exporters()) rows.push_back({exporter->name(), exporter->summary()});
  return rows;
}

std::string figures(const TradeRow& row) {
  std::string text;
  for (const auto& [name, value] : row.numbers)
    text += (text.empty() ? "" : ", ") + name + " " + number(value, 4);
  return text;
}

Rows trade_rows(const std::string& table) {
  const TradeTables trade;
  Rows rows;
  for (const TradeRow& row : trade.table(table)) {
    rows.push_back({row.name, row.label + ": " + figures(row)});
    rows.push_back({"", "source: " + row.source});
  }
  return rows;
}

std::vector<std::string> known() {
  std::vector<std::string> names{"methods", "exporters", "keys"};
  for (const std::string& table : TradeTables().table_names()) names.push_back(table);
  return names;
}

std::string listing(const std::string& what) {
  if (what == "methods") return aligned(method_rows());
  if (what == "exporters") return aligned(exporter_rows());
  if (what == "keys") return keys_as_markdown();
  return aligned(trade_rows(what));
}

int run(const std::vector<std::string>& arguments) {
  Accepts accepts{po::options_description(), {"what"}};
  po::variables_map values;
  if (!parse(list_command(), accepts, arguments, values)) return kDone;
  const std::string what = required(values, "what", "WHAT (" + listed(known()) + ")");
  const std::vector<std::string> names = known();
  if (std::find(names.begin(), names.end(), what) == names.end())
    throw UsageError{"list " + what + " is unknown: " + listed(names)};
  print(listing(what));
  return kDone;
}

}  // namespace

Command list_command() {
  return {"list", "list methods|exporters|keys|timbers|boards|glues|cauls|straps|classes|fasteners",
          "Shows what is known: press methods, exporters, job-file keys, trade rows with their sources.",
          run};
}

}  // namespace lamwright::cli
