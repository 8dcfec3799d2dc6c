// Typed, checked access to the nodes of a parsed job file. Collects errors instead of stopping at the first.
#pragma once
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "kernel/job/keys.hpp"
#include "shared/error.hpp"
#include "shared/quantity.hpp"
#include "shared/toml.hpp"

namespace lamwright {

// A node and the key that people know it by: "layup.plies[1].thickness".
struct Node {
  const toml::node* node = nullptr;  // null: not given
  std::string key;
  const toml::node* parent = nullptr;  // the table or list it would stand in
  explicit operator bool() const { return node != nullptr; }
};

// A text that begins with a letter: a name, not a quantity.
bool named(const Node& node);

class Reader {
 public:
  Reader(const toml::table& root, std::string file, const std::vector<KeyRow>& schemas);

  const std::vector<Error>& errors() const { return errors_; }
  std::vector<std::string> notes() const { return notes_; }
  void note(std::string sentence) { notes_.push_back(std::move(sentence)); }
  LengthUnit units() const { return units_; }

  Node at(const std::string& path) const;  // "panel.width"
  Node in(const Node& table, const std::string& key) const;
  Node item(const Node& list, std::size_t i) const;
  std::size_t size(const Node& list) const;  // 0 when it is no list

  // Each reads by the row of the key table that the node's key names; a node not given yields the row's
  // default.
  double length(const Node& node);
  double number(const Node& node);
  int integer(const Node& node);
  double force(const Node& node);
  double pressure(const Node& node);
  bool flag(const Node& node);
  std::string text(const Node& node);  // choices are checked
  std::optional<double> length_if(const Node& node);
  std::optional<double> number_if(const Node& node);

  const KeyRow& row(const Node& node) const;
  void refuse(const Node& node, const std::string& problem, const std::string& remedy);
  void refuse_missing(const Node& node);
  void keep(const Error& error) {
    if (errors_.size() < kMostErrors) errors_.push_back(error);
  }
  Place place(const Node& node) const;
  // Further errors would not be told, so there is no use in looking for them.
  bool full() const { return errors_.size() >= kMostErrors; }
  // Whether a list has at most so many items of a kind ("ply"); refuses it otherwise.
  bool fits(const Node& list, std::size_t most, const std::string& kinds, const std::string& remedy);
  void refuse_unknown_keys();
  void refuse_unknown_keys_in(const Node& table);
  void read_units();

  static constexpr std::size_t kMostErrors = 20;

 private:
  double ranged(const Node& node, double value, double scale, const std::string& unit);
  double quantity(const Node& node, Reading (*parse)(std::string_view), const std::string& unit);
  void check_keys(const toml::table& table, const std::string& path, const std::string& shown);
  void check_list(const toml::array& list, const std::string& path, const std::string& shown);
  void unknown(const toml::node& node, const std::string& path, const std::string& shown,
               const std::string& key);

  const toml::table& root_;
  std::string file_;
  std::vector<KeyRow> rows_;
  std::set<std::string> known_;  // every path and every prefix of one
  std::vector<Error> errors_;
  std::vector<std::string> notes_;
  LengthUnit units_ = LengthUnit::mm;
};

}  // namespace lamwright
