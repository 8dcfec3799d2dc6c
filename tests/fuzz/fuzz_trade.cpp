// Trade rows: whatever the bytes are, rows are taken or refused, and a row that was taken is read by all who
// use it.
#include <algorithm>

#include "kernel/panel/materials.hpp"
#include "kernel/panel/trade.hpp"
#include "kernel/panel/trade_fields.hpp"
#include "tests/fuzz/target.hpp"

namespace {

using namespace lamwright;

void check(const std::string& table, const TradeRow& row) {
  ensure(!row.name.empty() && !row.label.empty() && !row.source.empty(), "a row tells what and whose it is");
  for (const TradeField& field : trade_fields(table)) {
    const auto value = row.find(field.name);
    ensure(!value || (*value >= field.least && *value <= field.most) || field.type == FieldType::flag,
           "figures lie within their fields' ranges");
    ensure(value || row.texts.contains(field.name) || row.lists.contains(field.name) || !field.required,
           "required fields are there");
  }
}

void use(const TradeTables& trade) {
  for (const TradeRow& row : trade.table("timbers")) timber_of(row);
  for (const TradeRow& row : trade.table("boards")) board_of(row);
  for (const TradeRow& row : trade.table("classes")) class_of(row);
  for (const TradeRow& row : trade.table("glues")) glue_of(row);
  for (const TradeRow& row : trade.table("prices")) price_of(row);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto text = fuzz::text_of(data, size);
  static const TradeTables own;
  std::vector<Error> faults;
  const TradeTables trade = own.with(text, "rows.toml", faults);
  for (const Error& fault : faults) {
    fuzz::check_refusal(fault);
    ensure(fault.where().file == "rows.toml", "a fault names the file");
  }
  for (const std::string& table : trade.table_names())
    for (const TradeRow& row : trade.table(table)) check(table, row);
  use(trade);
  return faults.empty() ? 0 : fuzz::kRefused;
}
