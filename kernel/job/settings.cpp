#include "kernel/job/settings.hpp"

#include <optional>

#include "kernel/job/apply_settings.hpp"
#include "shared/error.hpp"
#include "shared/toml_text.hpp"

namespace lamwright {
namespace {

// A key of a table, or a place in a list.
struct Step {
  std::string key;
  std::optional<std::size_t> index;
};

[[noreturn]] void refuse(const Setting& setting, const std::string& problem, const std::string& remedy) {
  throw job_error({place_of(setting), 0, 0, {}}, problem, remedy);
}

[[noreturn]] void refuse_path(const Setting& setting) {
  refuse(setting, "\"" + setting.path + "\" is no path to a key",
         "write it as messages name keys: panel.width, or panel.profile[1].radius");
}

bool of_name(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
}

constexpr std::size_t kMostDigits = 6;

std::vector<Step> steps_of(const Setting& setting) {
  std::vector<Step> steps;
  const std::string& path = setting.path;
  std::size_t at = 0;
  while (true) {
    std::size_t end = at;
    while (end < path.size() && of_name(path[end])) ++end;
    if (end == at) refuse_path(setting);
    steps.push_back({path.substr(at, end - at), std::nullopt});
    while (end < path.size() && path[end] == '[') {
      const auto close = path.find(']', end);
      const std::string digits = close == std::string::npos ? "" : path.substr(end + 1, close - end - 1);
      if (digits.empty() || digits.size() > kMostDigits ||
          digits.find_first_not_of("0123456789") != std::string::npos)
        refuse_path(setting);
      steps.push_back({{}, std::stoul(digits)});
      end = close + 1;
    }
    if (end == path.size()) return steps;
    if (path[end] != '.') refuse_path(setting);
    at = end + 1;
  }
}

// Nothing where it is no TOML, or more than one value.
std::optional<toml::table> one_value(const std::string& text, const std::string& source) {
  try {
    toml::table table = parsed_toml("value = " + text, source);
    if (table.size() == 1 && table.contains("value")) return table;
    return std::nullopt;
  } catch (const Error&) {
    return std::nullopt;
  }
}

// What is no value is a text that needs no quotes.
toml::table parsed_value(const Setting& setting) {
  const std::string source = place_of(setting);
  if (auto table = one_value(setting.value, source)) return std::move(*table);
  std::string quoted;
  for (const char c : setting.value) quoted += (c == '\\' || c == '"' ? "\\" : "") + std::string(1, c);
  if (auto table = one_value("\"" + quoted + "\"", source)) return std::move(*table);
  refuse(setting, "the value holds characters that no text may hold", "use printable UTF-8 in one line");
}

// How the path looks up to a step, for messages.
std::string shown(const std::vector<Step>& steps, std::size_t count) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i)
    text += steps[i].index ? "[" + std::to_string(*steps[i].index) + "]" : (i ? "." : "") + steps[i].key;
  return text;
}

// The node that the step leads to from `from`; a table that is missing is made.
toml::node& node_at(const Setting& setting, const std::vector<Step>& steps, std::size_t i, toml::node& from) {
  if (steps[i].index) {
    toml::array* list = from.as_array();
    if (!list) refuse(setting, shown(steps, i) + " is no list", "leave out the number in brackets");
    if (*steps[i].index >= list->size())
      refuse(setting, shown(steps, i) + " has " + std::to_string(list->size()) + " entries, counted from 0",
             "name one of them");
    return *list->get(*steps[i].index);
  }
  toml::table* table = from.as_table();
  if (!table) refuse(setting, shown(steps, i) + " holds no keys", "set " + shown(steps, i) + " itself");
  if (!table->contains(steps[i].key)) table->insert(steps[i].key, toml::table{});
  return *table->get(steps[i].key);
}

void put(const Setting& setting, const std::vector<Step>& steps, toml::node& home, toml::node& value) {
  const Step& last = steps.back();
  const std::string above = shown(steps, steps.size() - 1);
  if (last.index) {
    (void)node_at(setting, steps, steps.size() - 1, home);
    toml::array& list = *home.as_array();
    value.visit(
        [&](auto& found) { list.replace(list.cbegin() + std::ptrdiff_t(*last.index), std::move(found)); });
    return;
  }
  toml::table* table = home.as_table();
  if (!table) refuse(setting, above + " holds no keys", "set " + above + " itself");
  value.visit([&](auto& found) { table->insert_or_assign(last.key, std::move(found)); });
}

}  // namespace

std::string to_text(const Setting& setting) { return setting.path + "=" + setting.value; }

std::string place_of(const Setting& setting) { return "setting " + to_text(setting); }

void apply_settings(const std::vector<Setting>& settings, toml::table& root) {
  for (const Setting& setting : settings) {
    const std::vector<Step> steps = steps_of(setting);
    toml::node* home = &root;
    for (std::size_t i = 0; i + 1 < steps.size(); ++i) home = &node_at(setting, steps, i, *home);
    toml::table value = parsed_value(setting);
    put(setting, steps, *home, *value.get("value"));
  }
}

}  // namespace lamwright
