// Trade tables: named rows of figures, each with its source. The user's own rows come on top.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "shared/error.hpp"

namespace lamwright {

// One row: its numbers (a flag is 0 or 1), its texts and its lists, by field name. trade_fields.hpp tells
// what the rows of a table hold.
struct TradeRow {
  std::string name;                            // unique in its table: "birch-yellow"
  std::string label;                           // for people
  std::string source;                          // of the figures; never empty
  std::string file = {};                       // of the user, that it comes from; empty for the program's own
  std::map<std::string, double> numbers = {};  // in mm, N, MPa, kg/m3, minutes ..., as trade_fields says
  std::map<std::string, std::string> texts = {};          // UTF-8
  std::map<std::string, std::vector<double>> lists = {};  // lengths in mm

  std::optional<double> find(const std::string& field) const;  // of `numbers`; nothing when the row lacks it
  // Throws Error (job) when the row lacks it; required fields are there.
  double number(const std::string& field) const;
};

// Immutable. Tables: timbers, bends, glues, boards, cauls, straps, classes, fasteners, prices (none of the
// program's own); their rows in the
// order of their file, new rows of the user last.
class TradeTables {
 public:
  TradeTables();  // the compiled-in rows

  // With the rows of a user's file on top: `[timbers.my-ash] ...`. A row of a known name keeps the fields
  // that the file does not give; a row without a source is "own data". Lengths in mm, forces in N, pressures
  // in MPa, or texts with their unit. Faults of the file are added to `faults` (job, with line and
  // column) until there are twenty; rows with one are left out.
  TradeTables with(std::string_view toml, const std::string& file, std::vector<Error>& faults) const;
  // The same; throws the first fault.
  TradeTables with(std::string_view toml, const std::string& file) const;

  // `name` must be one of table_names.
  const std::vector<TradeRow>& table(const std::string& name) const;
  std::vector<std::string> table_names() const;  // by alphabet
  // Null when there is none; lives as long as the tables. The table must exist.
  const TradeRow* find(const std::string& table, const std::string& row) const;
  // In the order of the table, which must exist.
  std::vector<std::string> row_names(const std::string& table) const;

 private:
  std::map<std::string, std::vector<TradeRow>> tables_;
};

}  // namespace lamwright
