// What the rows of each trade table hold. Checks of a user's rows, their messages and `lamwright list` follow
// from it.
#pragma once
#include <string>
#include <vector>

namespace lamwright {

// What a field holds; a flag is true or false, a list one of numbers.
enum class FieldType { number, whole, flag, text, list };

// One field of a row. Numbers and the items of a list lie within `least` to `most`, in `unit`; a list has
// `fewest` to `longest` items; a text with `choices` is one of them.
struct TradeField {
  std::string name;                       // as data files spell it
  FieldType type = FieldType::number;     // decides which of the members below count
  bool required = false;                  // a row cannot do without it
  double least = 0, most = 0;             // of numbers and items
  std::string unit;                       // "mm", "MPa"; empty for bare numbers
  std::string meaning;                    // for people, a clause
  std::vector<std::string> choices = {};  // none: any text
  std::size_t fewest = 0, longest = 0;    // of lists
};

// In the order in which people read them; `label` and `source` belong to every row and come first and last.
// Empty for a name that is no trade table.
const std::vector<TradeField>& trade_fields(const std::string& table);
// Null for a field or table that there is not.
const TradeField* trade_field(const std::string& table, const std::string& name);
std::vector<std::string> trade_field_names(const std::string& table);  // in the same order

// "1 to 200 mm", "true or false", "text", "plywood or hardboard", "list of 2, each 100 to 20000 mm"
std::string allowed(const TradeField& field);

}  // namespace lamwright
