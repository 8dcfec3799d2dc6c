#include "kernel/job/reader.hpp"

#include <algorithm>
#include <cmath>

#include "shared/limits.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/toml_text.hpp"

namespace lamwright {
namespace {

// "layup.plies[3].grain" -> "layup.plies[].grain"
std::string pattern(const std::string& key) {
  std::string out;
  bool inside = false;
  for (const char c : key) {
    if (c == ']') inside = false;
    if (!inside) out += c;
    if (c == '[') inside = true;
  }
  return out;
}

std::string last_part(const std::string& path) { return path.substr(path.find_last_of('.') + 1); }

std::string limit_text(double value) { return value >= 1e12 ? "any" : number(value, 6); }

}  // namespace

bool named(const Node& node) {
  const auto text = node.node ? node.node->value<std::string>() : std::nullopt;
  return text && !text->empty() &&
         ((text->front() >= 'a' && text->front() <= 'z') || (text->front() >= 'A' && text->front() <= 'Z'));
}

Reader::Reader(const toml::table& root, std::string file, const std::vector<KeyRow>& schemas)
    : root_(root), file_(std::move(file)), rows_(job_keys()) {
  rows_.insert(rows_.end(), schemas.begin(), schemas.end());
  for (const KeyRow& row : rows_) {
    known_.insert(row.path);
    for (auto dot = row.path.find('.'); dot != std::string::npos; dot = row.path.find('.', dot + 1))
      known_.insert(row.path.substr(0, dot));
  }
}

Node Reader::at(const std::string& path) const {
  Node node{&root_, ""};
  std::size_t begin = 0;
  while (begin <= path.size()) {
    const auto end = std::min(path.find('.', begin), path.size());
    node = in(node, path.substr(begin, end - begin));
    begin = end + 1;
  }
  return node;
}

Node Reader::in(const Node& table, const std::string& key) const {
  const auto* t = table.node ? table.node->as_table() : nullptr;
  return {t ? t->get(key) : nullptr, table.key.empty() ? key : table.key + "." + key,
          table.node ? table.node : table.parent};
}

Node Reader::item(const Node& list, std::size_t i) const {
  const auto* a = list.node ? list.node->as_array() : nullptr;
  return {a ? a->get(i) : nullptr, list.key + "[" + std::to_string(i) + "]", list.node};
}

std::size_t Reader::size(const Node& list) const {
  const auto* a = list.node ? list.node->as_array() : nullptr;
  return a ? a->size() : 0;
}

const KeyRow& Reader::row(const Node& node) const {
  const std::string path = pattern(node.key);
  const auto found =
      std::find_if(rows_.begin(), rows_.end(), [&](const KeyRow& r) { return r.path == path; });
  ensure(found != rows_.end(), "every key that is read has a row in the key table");
  return *found;
}

Place Reader::place(const Node& node) const {
  const toml::node* shown = node.node ? node.node : node.parent;
  if (!shown || shown == &root_) return {file_, 0, 0, node.key};
  const toml::source_region& source = shown->source();
  // A value of the command line has no line in the file.
  if (source.path && *source.path != file_) return {*source.path, 0, 0, node.key};
  return {file_, int(source.begin.line), int(source.begin.column), node.key};
}

void Reader::refuse(const Node& node, const std::string& problem, const std::string& remedy) {
  keep(job_error(place(node), problem, remedy));
}

bool Reader::fits(const Node& list, std::size_t most, const std::string& kinds, const std::string& remedy) {
  if (size(list) <= most) return true;
  refuse(list, "has " + std::to_string(size(list)) + " " + kinds,
         "allowed at most " + std::to_string(most) + "; " + remedy);
  return false;
}

void Reader::refuse_missing(const Node& node) { refuse(node, "is missing", row(node).meaning); }

double Reader::ranged(const Node& node, double value, double scale, const std::string& unit) {
  const KeyRow& r = row(node);
  const double scaled = value * scale;
  if (std::isfinite(scaled) && scaled >= r.least && scaled <= r.most) return scaled;
  refuse(node, "read " + value_read(*node.node),
         "allowed " + limit_text(r.least) + " to " + limit_text(r.most) + (unit.empty() ? "" : " " + unit));
  return std::clamp(0.0, r.least, r.most);
}

double Reader::length(const Node& node) {
  const KeyRow& r = row(node);
  if (!node) {
    if (r.fallback.empty()) refuse_missing(node);
    return r.fallback.empty() ? r.least : parse_length(r.fallback, LengthUnit::mm).value;
  }
  if (node.node->is_number()) return ranged(node, number_at(*node.node), factor(units_), "mm");
  if (!node.node->is_string()) {
    refuse(node, "read " + value_read(*node.node), "give a length like 18 or \"3/4 in\"");
    return r.least;
  }
  const std::string text = *node.node->value<std::string>();
  try {
    const Reading reading = parse_length(text, units_);
    const double value = ranged(node, reading.value, 1, "mm");
    if (value == reading.value)
      notes_.push_back(node.key + ": " + (reading.note.empty() ? text : reading.note) + " = " +
                       lamwright::number(value, 4) + " mm");
    return value;
  } catch (const Error& fault) {
    refuse(node, fault.problem(), fault.remedy());
    return r.least;
  }
}

double Reader::number(const Node& node) {
  const KeyRow& r = row(node);
  if (!node) {
    if (r.fallback.empty()) refuse_missing(node);
    return r.fallback.empty() ? r.least : parse_length(r.fallback, LengthUnit::mm).value;
  }
  if (!node.node->is_number()) {
    refuse(node, "read " + value_read(*node.node),
           "give a number from " + limit_text(r.least) + " to " + limit_text(r.most));
    return r.least;
  }
  return ranged(node, number_at(*node.node), 1, "");
}

int Reader::integer(const Node& node) {
  const KeyRow& r = row(node);
  if (!node) {
    if (r.fallback.empty()) refuse_missing(node);
    return int(r.fallback.empty() ? r.least : parse_length(r.fallback, LengthUnit::mm).value);
  }
  const auto value = node.node->is_number() ? std::optional(number_at(*node.node)) : std::nullopt;
  if (!value || !std::isfinite(*value) || *value != std::floor(*value) || *value < r.least ||
      *value > r.most) {
    refuse(node, "read " + value_read(*node.node),
           "allowed: a whole number from " + limit_text(r.least) + " to " + limit_text(r.most));
    return int(r.least);
  }
  return int(*value);
}

double Reader::quantity(const Node& node, Reading (*parse)(std::string_view), const std::string& unit) {
  const KeyRow& r = row(node);
  if (!node) return parse(r.fallback).value;
  if (node.node->is_number()) return ranged(node, number_at(*node.node), 1, unit);
  try {
    if (node.node->is_string()) return ranged(node, parse(*node.node->value<std::string>()).value, 1, unit);
    refuse(node, "read " + value_read(*node.node),
           "allowed " + limit_text(r.least) + " to " + limit_text(r.most) + " " + unit);
  } catch (const Error& fault) {
    refuse(node, fault.problem(), fault.remedy());
  }
  return r.least;
}

double Reader::force(const Node& node) { return quantity(node, parse_force, "N"); }

double Reader::pressure(const Node& node) { return quantity(node, parse_pressure, "MPa"); }

bool Reader::flag(const Node& node) {
  if (!node) return row(node).fallback == "true";
  if (node.node->is_boolean()) return *node.node->value<bool>();
  refuse(node, "read " + value_read(*node.node), "allowed true or false");
  return false;
}

std::string Reader::text(const Node& node) {
  const KeyRow& r = row(node);
  if (!node) {
    if (r.fallback.size() >= 2 && r.fallback.front() == '"')
      return r.fallback.substr(1, r.fallback.size() - 2);
    return {};
  }
  if (!node.node->is_string()) {
    refuse(node, "read " + value_read(*node.node),
           r.choices.empty() ? "give a text in quotes" : "allowed " + listed(r.choices));
    return {};
  }
  const std::string value = *node.node->value<std::string>();
  const auto controls = std::find_if(
      value.begin(), value.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
  if (controls != value.end()) refuse(node, "holds a control character", "use printable text in one line");
  if (value.size() > kLongestText) {
    refuse(node, "is a text of " + std::to_string(value.size()) + " bytes",
           "allowed up to " + std::to_string(kLongestText));
    return {};
  }
  if (!r.choices.empty() && r.type == KeyType::choice &&
      std::find(r.choices.begin(), r.choices.end(), value) == r.choices.end()) {
    const auto near = nearest_name(value, r.choices);
    refuse(node, "read \"" + value + "\"",
           "allowed " + listed(r.choices) + (near ? "; did you mean \"" + *near + "\"?" : ""));
    return r.choices.front();
  }
  return value;
}

std::optional<double> Reader::length_if(const Node& node) {
  return node ? std::optional(length(node)) : std::nullopt;
}
std::optional<double> Reader::number_if(const Node& node) {
  return node ? std::optional(number(node)) : std::nullopt;
}

void Reader::read_units() {
  const Node node = at("units");
  unit_from(text(node), units_);
}

void Reader::unknown(const toml::node& node, const std::string& path, const std::string& shown,
                     const std::string& key) {
  std::vector<std::string> siblings;
  std::vector<std::string> homes;
  const std::string prefix = path.empty() ? "" : path + ".";
  for (const KeyRow& r : rows_) {
    if (r.path.find("[]") == r.path.size() - 2) continue;
    const std::string rest = r.path.starts_with(prefix) ? r.path.substr(prefix.size()) : "";
    // A table within this one is known by its first part.
    const std::string name = rest.substr(0, rest.find('.'));
    if (!name.empty() && name.find('[') == std::string::npos &&
        std::find(siblings.begin(), siblings.end(), name) == siblings.end())
      siblings.push_back(name);
    const auto dot = r.path.find_last_of('.');
    if (dot != std::string::npos && r.path.find('[') == std::string::npos && last_part(r.path) == key)
      homes.push_back("[" + r.path.substr(0, dot) + "]");
  }
  const auto near = nearest_name(key, siblings);
  std::string remedy = near             ? "did you mean \"" + *near + "\"?"
                       : !homes.empty() ? "it belongs to " + listed(homes)
                                        : "known here: " + listed(siblings);
  if (siblings.empty() && !near && homes.empty()) remedy = "take it out";
  refuse({&node, shown.empty() ? key : shown + "." + key}, "is not a known key", remedy);
}

void Reader::check_list(const toml::array& list, const std::string& path, const std::string& shown) {
  for (std::size_t i = 0; i < list.size() && !full(); ++i)
    if (const auto* table = list.get(i)->as_table())
      check_keys(*table, path + "[]", shown + "[" + std::to_string(i) + "]");
}

void Reader::check_keys(const toml::table& table, const std::string& path, const std::string& shown) {
  for (const auto& [name, node] : table) {
    const std::string key(name.str());
    if (full()) return;
    const std::string whole = path.empty() ? key : path + "." + key;
    const std::string whole_shown = shown.empty() ? key : shown + "." + key;
    if (!known_.contains(whole))
      unknown(node, path, shown, key);
    else if (const auto* inner = node.as_table())
      check_keys(*inner, whole, whole_shown);
    else if (const auto* list = node.as_array())
      check_list(*list, whole, whole_shown);
  }
}

void Reader::refuse_unknown_keys() { check_keys(root_, "", ""); }

void Reader::refuse_unknown_keys_in(const Node& node) {
  if (!node) return;
  if (const auto* table = node.node->as_table()) check_keys(*table, pattern(node.key), node.key);
  if (const auto* list = node.node->as_array()) check_list(*list, pattern(node.key), node.key);
}

}  // namespace lamwright
