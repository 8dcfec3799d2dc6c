// What the rows of each trade table hold. Checks of a user's rows, their messages and `lamwright list` follow
// from it.
#pragma once
#include <string>
#include <vector>

namespace lamwright {

enum class FieldType { number, whole, flag, text, list };

// One field of a row. Numbers and the items of a list lie within `least` to `most`, in `unit`; a list has
// `fewest` to `longest` items; a text with `choices` is one of them.
struct TradeField {
  std::string name;
  FieldType type = FieldType::number;
  bool required = false;  // a row cannot do without it
  double least = 0, most = 0;
  std::string unit;
  std::string meaning;
  std::vector<std::string> choices = {};
  std::size_t fewest = 0, longest = 0;
};

// In the order in which people read them; `label` and `source` belong to every row and come first and last.
// Empty for a name that is no trade table.
const std::vector<TradeField>& trade_fields(const std::string& table);
const TradeField* trade_field(const std::string& table, const std::string& name);
std::vector<std::string> trade_field_names(const std::string& table);

// "1 to 200 mm", "true or false", "text", "plywood or hardboard", "list of 2, each 100 to 20000 mm"
std::string allowed(const TradeField& field);

}  // namespace lamwright
