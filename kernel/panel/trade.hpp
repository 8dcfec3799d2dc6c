// Trade tables: named rows of figures, each with its source. The user's own rows come on top.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lamwright {

// One row: its numbers, its texts and its lists, by field name.
struct TradeRow {
  std::string name;
  std::string label;
  std::string source;
  std::map<std::string, double> numbers;
  std::map<std::string, std::string> texts;
  std::map<std::string, std::vector<double>> lists;

  std::optional<double> find(const std::string& field) const;
  // Throws Error (internal) when a compiled-in row lacks a field that the program needs.
  double number(const std::string& field) const;
};

// Immutable. Tables: timbers, glues, boards, cauls, straps, classes, fasteners.
class TradeTables {
 public:
  TradeTables();  // the compiled-in rows
  // With the rows of a user's file on top: `[timbers.my-ash] ...`. Throws Error (job, with line and column).
  TradeTables with(std::string_view toml, const std::string& file) const;

  const std::vector<TradeRow>& table(const std::string& name) const;
  std::vector<std::string> table_names() const;
  const TradeRow* find(const std::string& table, const std::string& row) const;
  std::vector<std::string> row_names(const std::string& table) const;

 private:
  std::map<std::string, std::vector<TradeRow>> tables_;
};

}  // namespace lamwright
