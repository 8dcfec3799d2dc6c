#include "kernel/job/start.hpp"

#include <map>

#include "kernel/job/keys.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

// What a shape sets; every other key stands as a comment with its default.
using Given = std::map<std::string, std::string>;

Given given(const std::string& shape) {
  const std::string plies = "[\n  {timber = \"birch-yellow\", thickness = 1.5, count = 7},\n]";
  if (shape == "arch")
    return {{"title", "\"An arched panel\""},
            {"panel.width", "600"},
            {"panel.profile", "[\n  {bend = 100, radius = 450},   # degrees, positive for a crown\n]"},
            {"layup.plies", plies}};
  if (shape == "ell")
    return {{"title", "\"An L-shaped panel\""},
            {"panel.width", "600"},
            {"panel.profile", "[\n  {line = 350},\n  {bend = 90, radius = 200},\n  {line = 350},\n]"},
            {"layup.plies", plies}};
  if (shape == "ess")
    return {{"title", "\"An S-shaped panel\""},
            {"panel.width", "600"},
            {"panel.profile",
             "[\n  {bend = 45, radius = 500},\n  {line = 80},\n  {bend = -40, radius = 550},   # a hollow is "
             "negative\n]"},
            {"layup.plies", plies}};
  if (shape == "flat")
    return {{"title", "\"A flat panel\""},
            {"panel.width", "600"},
            {"panel.profile", "[\n  {line = 900},\n]"},
            {"layup.plies", plies}};
  return {{"title", "\"A U-shaped panel\""},
          {"panel.width", "450"},
          {"panel.profile",
           "[\n  {line = 250},\n  {bend = 90, radius = 200},\n  {line = 220},\n  {bend = 90, radius = "
           "200},\n  {line = 250},\n]"},
          {"layup.plies", plies}};
}

// Only keys that stand alone on a line: items of lists and members of inline tables are shown in their
// meaning.
bool own_line(const KeyRow& row) {
  if (row.type == KeyType::table || row.path.find('[') != std::string::npos) return false;
  for (const std::string form :
       {"panel.profile.", "press.springback.", "caul.kind.", "formers.board.", "formers.spacing."})
    if (row.path.starts_with(form)) return false;
  return true;
}

std::string range_text(const KeyRow& row) {
  if (row.type == KeyType::choice) {
    std::string text;
    for (const std::string& choice : row.choices) text += (text.empty() ? "" : " | ") + choice;
    return text;
  }
  const bool ranged = row.type == KeyType::length || row.type == KeyType::number ||
                      row.type == KeyType::integer || row.type == KeyType::force;
  if (!ranged || row.most >= 1e9) return {};
  const std::string unit = row.type == KeyType::length ? " mm" : row.type == KeyType::force ? " N" : "";
  return number(row.least) + " to " + number(row.most) + unit;
}

std::string comment(const KeyRow& row) {
  const std::string range = range_text(row);
  return "   # " + row.meaning + (range.empty() ? "" : " (" + range + ")");
}

// The value of a key as start writes it; a default with no text of its own is left for the reader to fill in.
std::string entry(const KeyRow& row, const Given& set, const std::string& key) {
  const auto found = set.find(row.path);
  if (found != set.end()) {
    const bool long_value = found->second.find('\n') != std::string::npos;
    return long_value ? "# " + row.meaning + "\n" + key + " = " + found->second + "\n"
                      : key + " = " + found->second + comment(row) + "\n";
  }
  if (row.fallback.empty()) return "# " + key + ":" + comment(row).substr(4) + "\n";
  return "# " + key + " = " + row.fallback + comment(row) + "\n";
}

// "beams.screw.diameter" belongs to the table "beams" under the key "screw.diameter".
std::string table_of(const std::string& path) {
  const auto dot = path.find('.');
  return dot == std::string::npos ? "" : path.substr(0, dot);
}

}  // namespace

const std::vector<StartShape>& start_shapes() {
  static const std::vector<StartShape> shapes{{"arch", "one bend"},
                                              {"ell", "one bend between two flats"},
                                              {"u", "two bends and three flats, pressed on one mould"},
                                              {"ess", "a crown and a hollow, pressed between two moulds"},
                                              {"flat", "no bend, pressed between two crowned halves"}};
  return shapes;
}

std::string start_text(const std::string& shape) {
  const Given set = given(shape);
  std::string text =
      "# A job for lamwright. Lengths are numbers in `units` or texts with a unit: \"18 mm\", \"3/4 in\", "
      "\"4 ft 6 in\".\n"
      "# Lines like `# key = value` are defaults: take the # away to change one. Lines like `# key: ...` "
      "have none.\n\nschema = 1\n";
  std::string table;
  for (const KeyRow& row : job_keys()) {
    if (!own_line(row) || row.path == "schema") continue;
    const std::string own = table_of(row.path);
    if (own != table) {
      text += "\n[" + own + "]\n";
      table = own;
    }
    text += entry(row, set, table.empty() ? row.path : row.path.substr(table.size() + 1));
  }
  return text;
}

std::string keys_as_markdown() {
  std::string text = "| key | default | allowed | meaning |\n| --- | --- | --- | --- |\n";
  for (const KeyRow& row : job_keys()) {
    if (row.type == KeyType::table) continue;
    std::string range = range_text(row);
    for (auto bar = range.find('|'); bar != std::string::npos; bar = range.find('|'))
      range.replace(bar, 1, "or");
    text += "| `" + row.path + "` | " + (row.fallback.empty() ? "" : "`" + row.fallback + "`") + " | " +
            range + " | " + row.meaning + " |\n";
  }
  return text;
}

}  // namespace lamwright
