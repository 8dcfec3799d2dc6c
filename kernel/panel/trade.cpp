#include "kernel/panel/trade.hpp"

#include <algorithm>

#include "kernel/panel/trade_fields.hpp"
#include "kernel/panel/trade_reader.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/trade_tables.hpp"

namespace lamwright {
namespace {

using Rows = std::vector<TradeRow>;

TradeRow* row_named(Rows& rows, const std::string& name) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const TradeRow& r) { return r.name == name; });
  return found == rows.end() ? nullptr : &*found;
}

// The fields that are not written stay as they were.
bool keeps_any(const TradeRow& below, const TradeRow& written) {
  return std::any_of(below.numbers.begin(), below.numbers.end(),
                     [&](const auto& figure) { return !written.numbers.contains(figure.first); });
}

TradeRow laid_over(const TradeRow* below, const TradeRow& written) {
  TradeRow row = written;
  if (below) {
    row.numbers.insert(below->numbers.begin(), below->numbers.end());
    row.texts.insert(below->texts.begin(), below->texts.end());
    row.lists.insert(below->lists.begin(), below->lists.end());
  }
  if (row.label.empty()) row.label = below ? below->label : row.name;
  if (row.source.empty()) row.source = "own data";
  // Figures that the user does not give are still of whoever gave them.
  if (below && keeps_any(*below, written)) row.source += "; the rest: " + below->source;
  row.texts["label"] = row.label;
  row.texts["source"] = row.source;
  return row;
}

bool has(const TradeRow& row, const TradeField& field) {
  return row.numbers.contains(field.name) || row.texts.contains(field.name) || row.lists.contains(field.name);
}

std::vector<std::string> lacking(const std::string& table, const TradeRow& row) {
  std::vector<std::string> names;
  for (const TradeField& field : trade_fields(table))
    if (field.required && !has(row, field)) names.push_back(field.name);
  return names;
}

std::string board_contradiction(const TradeRow& row) {
  if (row.lists.contains("veneers") && !row.texts.contains("veneer_timber"))
    return "veneers are given without veneer_timber";
  // Poisson's ratios that are taken for boards have no meaning beyond that.
  constexpr double kMostAcross = 10;
  const double along = row.number("E_along"), across = row.number("E_across");
  if (across > kMostAcross * along)
    return "E_across " + number(across) + " is more than ten times E_along " + number(along);
  return {};
}

// What two figures of one row say against each other; empty: nothing.
std::string contradiction(const std::string& table, const TradeRow& row) {
  const auto over = [&](const std::string& low, const std::string& high) {
    const auto a = row.find(low), b = row.find(high);
    return a && b && *a > *b ? low + " " + number(*a) + " is more than " + high + " " + number(*b)
                             : std::string();
  };
  if (table == "glues") return over("pressure_low", "pressure_high");
  if (table == "straps") return over("tension", "rating");
  // A sheet stiffer across its fibres than along them has the two exchanged.
  if (table == "timbers") return over("E_across", "E_along");
  if (table == "boards") return board_contradiction(row);
  return {};
}

struct Reference {
  const char* table;
  const char* field;
  const char* to;
};
constexpr Reference kReferences[] = {{"boards", "veneer_timber", "timbers"}, {"cauls", "class", "classes"}};

void check_references(const TradeTables& trade, const WrittenRow& written, std::vector<Error>& faults) {
  for (const Reference& reference : kReferences) {
    const auto named = written.row.texts.find(reference.field);
    if (written.table != reference.table || named == written.row.texts.end()) continue;
    if (trade.find(reference.to, named->second)) continue;
    const std::vector<std::string> names = trade.row_names(reference.to);
    const auto near = nearest_name(named->second, names);
    Place at = written.place;
    at.key += std::string(".") + reference.field;
    faults.push_back(job_error(
        at, "read \"" + named->second + "\", which is no row of the " + reference.to + " table",
        (near ? "did you mean \"" + *near + "\"? " : "") + std::string("known: ") + listed(names, "and")));
  }
}

// Lays one written row over those of its table, unless it lacks something or contradicts itself.
void lay(const WrittenRow& written, Rows& rows, std::vector<Error>& faults) {
  TradeRow* below = row_named(rows, written.row.name);
  TradeRow row = laid_over(below, written.row);
  const std::vector<std::string> missing = lacking(written.table, row);
  const std::string clash = missing.empty() ? contradiction(written.table, row) : "";
  if (!missing.empty())
    faults.push_back(job_error(
        written.place, "lacks " + listed(missing, "and"),
        "a new row of the " + written.table + " table needs " + (missing.size() == 1 ? "it" : "them")));
  else if (!clash.empty())
    faults.push_back(job_error(written.place, clash, "mend one of them"));
  else if (below)
    *below = std::move(row);
  else
    rows.push_back(std::move(row));
}

std::map<std::string, Rows> own_tables() {
  std::map<std::string, Rows> tables;
  for (const TradeText& text : trade_texts()) {
    const std::string name(text.name);
    tables[name] = read_own_rows(text.text, name);
  }
  return tables;
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
  // Parsed once in a process: the texts never change, and a test plans thousands of jobs.
  static const std::map<std::string, Rows> own = own_tables();
  tables_ = own;
}

TradeTables TradeTables::with(std::string_view text, const std::string& file,
                              std::vector<Error>& faults) const {
  TradeTables out = *this;
  const std::vector<WrittenRow> written = read_trade_rows(text, file, table_names(), faults);
  for (const WrittenRow& row : written) lay(row, out.tables_.at(row.table), faults);
  // After all rows: a row may name another that stands below it in the file.
  for (const WrittenRow& row : written) check_references(out, row, faults);
  return out;
}

TradeTables TradeTables::with(std::string_view text, const std::string& file) const {
  std::vector<Error> faults;
  TradeTables out = with(text, file, faults);
  if (!faults.empty()) throw faults.front();
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
