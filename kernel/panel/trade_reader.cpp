#include "kernel/panel/trade_reader.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/panel/trade_fields.hpp"
#include "shared/limits.hpp"
#include "shared/quantity.hpp"
#include "shared/text.hpp"
#include "shared/toml_text.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostRows = 2000;    // of a file
constexpr std::size_t kMostFaults = 20;    // that are told of it
constexpr std::size_t kLongestName = 100;  // bytes, of a row
constexpr std::size_t kLongestText = 1000;

using Entry = std::pair<std::string, const toml::node*>;

// In the order of the file; the parser sorts by name.
std::vector<Entry> entries(const toml::table& table) {
  std::vector<Entry> out;
  for (const auto& [key, node] : table) out.emplace_back(std::string(key.str()), &node);
  const auto line_of = [](const Entry& e) {
    return std::pair(e.second->source().begin.line, e.second->source().begin.column);
  };
  std::stable_sort(out.begin(), out.end(),
                   [&](const Entry& a, const Entry& b) { return line_of(a) < line_of(b); });
  return out;
}

// Texts of a unit that the table's figures may be written in.
std::optional<double> parsed_quantity(const std::string& text, const std::string& unit) {
  if (unit == "mm") return parse_length(text, LengthUnit::mm).value;
  if (unit == "N") return parse_force(text).value;
  if (unit == "MPa") return parse_pressure(text).value;
  if (unit == "g/m2") return parse_mass_per_area(text).value;
  return std::nullopt;
}

class RowReader {
 public:
  RowReader(std::string table, std::string file, std::vector<Error>& faults)
      : table_(std::move(table)), file_(std::move(file)), faults_(faults) {}

  TradeRow row(const std::string& name, const toml::table& written) {
    TradeRow out{name, "", "", file_};
    for (const auto& [field, node] : entries(written)) read(field, *node, table_ + "." + name, out);
    if (const auto label = out.texts.find("label"); label != out.texts.end()) out.label = label->second;
    if (const auto source = out.texts.find("source"); source != out.texts.end()) out.source = source->second;
    return out;
  }

 private:
  void refuse(const toml::node& node, const std::string& key, const std::string& problem,
              const std::string& remedy) {
    const auto at = node.source().begin;
    faults_.push_back(job_error({file_, int(at.line), int(at.column), key}, problem, remedy));
  }

  void read(const std::string& name, const toml::node& node, const std::string& row_key, TradeRow& out) {
    const TradeField* field = trade_field(table_, name);
    const std::string key = row_key + "." + name;
    if (!field) return refuse_unknown(name, node, row_key);
    if (field->type == FieldType::text) {
      if (const auto value = text(*field, node, key)) out.texts[name] = *value;
    } else if (field->type == FieldType::list) {
      if (const auto value = list(*field, node, key)) out.lists[name] = *value;
    } else if (const auto value =
                   field->type == FieldType::flag ? flag(*field, node, key) : figure(*field, node, key)) {
      out.numbers[name] = *value;
    }
  }

  void refuse_unknown(const std::string& name, const toml::node& node, const std::string& row_key) {
    const std::string written = row_key.substr(table_.size() + 1) + "." + name;
    if (node.is_table())
      return refuse(node, row_key + "." + name, "is a table within a row",
                    "a name with a dot is written in quotes: [" + table_ + ".\"" + written + "\"]");
    const std::vector<std::string> known = trade_field_names(table_);
    const auto near = nearest_name(name, known);
    refuse(node, row_key + "." + name, "is not a field of the " + table_ + " table",
           near ? "did you mean \"" + *near + "\"?" : "known: " + listed(known, "and"));
  }

  std::optional<double> figure(const TradeField& field, const toml::node& node, const std::string& key) {
    std::optional<double> value = node.is_number() ? std::optional(number_at(node)) : std::nullopt;
    try {
      if (node.is_string()) value = parsed_quantity(*node.value<std::string>(), field.unit);
    } catch (const Error& fault) {
      refuse(node, key, fault.problem(), fault.remedy());
      return std::nullopt;
    }
    const bool whole = field.type == FieldType::number || (value && *value == std::floor(*value));
    if (value && whole && *value >= field.least && *value <= field.most) return value;
    refuse(node, key, "read " + value_read(node), "allowed " + allowed(field));
    return std::nullopt;
  }

  std::optional<double> flag(const TradeField& field, const toml::node& node, const std::string& key) {
    if (node.is_boolean()) return *node.value<bool>() ? 1 : 0;
    refuse(node, key, "read " + value_read(node), "allowed " + allowed(field));
    return std::nullopt;
  }

  std::optional<std::string> text(const TradeField& field, const toml::node& node, const std::string& key) {
    const auto value = node.is_string() ? node.value<std::string>() : std::nullopt;
    const auto is_choice = [&] {
      return field.choices.empty() ||
             std::find(field.choices.begin(), field.choices.end(), *value) != field.choices.end();
    };
    if (value && has_control_character(*value)) {
      refuse(node, key, "holds a control character", "use printable text in one line");
      return std::nullopt;
    }
    if (value && value->size() > kLongestText) {
      refuse(node, key, "is a text of " + std::to_string(value->size()) + " bytes",
             "allowed up to " + std::to_string(kLongestText));
      return std::nullopt;
    }
    if (value && !value->empty() && is_choice()) return value;
    const auto near = value ? nearest_name(*value, field.choices) : std::nullopt;
    refuse(node, key, "read " + value_read(node),
           "allowed " + allowed(field) + (near ? "; did you mean \"" + *near + "\"?" : ""));
    return std::nullopt;
  }

  std::optional<std::vector<double>> list(const TradeField& field, const toml::node& node,
                                          const std::string& key) {
    const auto* items = node.as_array();
    if (!items || items->size() < field.fewest || items->size() > field.longest) {
      refuse(node, key,
             items ? "has " + std::to_string(items->size()) + " items" : "read " + value_read(node),
             "allowed " + allowed(field));
      return std::nullopt;
    }
    TradeField item = field;
    item.type = FieldType::number;
    std::vector<double> out;
    for (std::size_t i = 0; i < items->size(); ++i)
      if (const auto value = figure(item, *items->get(i), key + "[" + std::to_string(i) + "]"))
        out.push_back(*value);
    return out.size() == items->size() ? std::optional(out) : std::nullopt;
  }

  std::string table_, file_;
  std::vector<Error>& faults_;
};

// All that a user's file may be wrong in above its rows.
class FileReader {
 public:
  FileReader(const std::string& file, const std::vector<std::string>& tables, std::vector<Error>& faults)
      : file_(file), tables_(tables), faults_(faults) {}

  std::vector<WrittenRow> rows(const toml::table& root) {
    std::vector<WrittenRow> out;
    refuse_many(root);
    for (const auto& [name, node] : entries(root)) {
      if (faults_.size() >= kMostFaults) break;
      if (is_trade_table(name, *node)) add_rows(name, *node->as_table(), out);
    }
    std::stable_sort(out.begin(), out.end(), [](const WrittenRow& a, const WrittenRow& b) {
      return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
    });
    return out;
  }

 private:
  void refuse_many(const toml::table& root) const {
    std::size_t rows = 0;
    for (const auto& [name, node] : root)
      if (const auto* table = node.as_table()) rows += table->size();
    if (rows > kMostRows)
      throw job_error({file_, 0, 0, {}}, "holds " + std::to_string(rows) + " rows",
                      "allowed at most " + std::to_string(kMostRows) + "; keep those that are used");
  }

  Place place(const toml::node& node, const std::string& key) const {
    return {file_, int(node.source().begin.line), int(node.source().begin.column), key};
  }

  bool is_trade_table(const std::string& name, const toml::node& node) {
    const bool known = std::find(tables_.begin(), tables_.end(), name) != tables_.end();
    if (known && node.is_table()) return true;
    if (known) {
      faults_.push_back(job_error(place(node, name), "is not a table", "write rows as [" + name + ".NAME]"));
      return false;
    }
    const auto near = nearest_name(name, tables_);
    faults_.push_back(job_error(place(node, name), "is not a trade table",
                                (near ? "did you mean \"" + *near + "\"? " : "") +
                                    std::string("tables are ") + listed(tables_, "and")));
    return false;
  }

  void add_rows(const std::string& table, const toml::table& written, std::vector<WrittenRow>& out) {
    for (const auto& [name, node] : entries(written)) {
      if (faults_.size() >= kMostFaults) return;
      const Place at = place(*node, table + "." + name);
      if (!node->is_table()) {
        faults_.push_back(job_error(at, "is not a row", "write [" + table + "." + name + "]"));
      } else if (name.empty() || has_control_character(name)) {
        faults_.push_back(job_error(place(*node, table), "has a row without a printable name",
                                    "name it by printable text in one line"));
      } else if (name.size() > kLongestName) {
        faults_.push_back(job_error(at, "has a name of " + std::to_string(name.size()) + " bytes",
                                    "allowed up to " + std::to_string(kLongestName)));
      } else {
        const std::size_t before = faults_.size();
        TradeRow row = RowReader(table, file_, faults_).row(name, *node->as_table());
        if (faults_.size() == before) out.push_back({table, std::move(row), at});
      }
    }
  }

  const std::string& file_;
  const std::vector<std::string>& tables_;
  std::vector<Error>& faults_;
};

}  // namespace

std::vector<WrittenRow> read_trade_rows(std::string_view text, const std::string& file,
                                        const std::vector<std::string>& tables, std::vector<Error>& faults) {
  try {
    const toml::table root = parsed_toml(plain_toml(text, file, "a file of trade rows is a few lines"), file);
    return FileReader(file, tables, faults).rows(root);
  } catch (const Error& fault) {
    faults.push_back(fault);
    return {};
  }
}

std::vector<TradeRow> read_own_rows(std::string_view text, const std::string& table) {
  std::vector<Error> faults;
  std::vector<TradeRow> out;
  const toml::table root = parsed_toml(text, table + ".toml");
  for (const auto& [name, node] : entries(root)) {
    ensure(node->is_table(), "a compiled-in trade table holds rows");
    out.push_back(RowReader(table, "", faults).row(name, *node->as_table()));
  }
  ensure(faults.empty(), "compiled-in trade rows are within their fields' ranges");
  return out;
}

}  // namespace lamwright
