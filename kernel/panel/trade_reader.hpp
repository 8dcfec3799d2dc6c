// Rows of trade tables from TOML, checked field by field.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "kernel/panel/trade.hpp"

namespace lamwright {

// A row with only the fields that are written, and where its table begins.
struct WrittenRow {
  std::string table;
  TradeRow row;
  Place place;
};

// The rows of a user's file, in its order. Faults (Error, job) are added; a row with one is left out.
std::vector<WrittenRow> read_trade_rows(std::string_view text, const std::string& file,
                                        const std::vector<std::string>& tables, std::vector<Error>& faults);

// The rows of one compiled-in table, `[birch-yellow] ...`. A fault is the program's own and stops it.
std::vector<TradeRow> read_own_rows(std::string_view text, const std::string& table);

}  // namespace lamwright
