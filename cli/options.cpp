#include "cli/options.hpp"

#include <algorithm>
#include <sstream>

#include "cli/terminal.hpp"

namespace lamwright::cli {
namespace {

constexpr const char* kHelpMeaning = "show this text";

std::string help_text(const Command& command, const po::options_description& options) {
  std::ostringstream text;
  text << "Usage: " << usage_line(command) << "\n\n" << command.summary << "\n";
  text << "\n" << options;
  return text.str();
}

po::value_semantic* value_of(const OptionRow& row) {
  if (row.repeats) return po::value<std::vector<std::string>>()->composing()->value_name(row.value);
  auto* value = po::value<std::string>()->value_name(row.value);
  return row.assumed.empty() ? value : value->default_value(row.assumed);
}

void add(po::options_description& options, const OptionRow& row) {
  const std::string name = row.name + (row.letter.empty() ? "" : "," + row.letter);
  if (row.value.empty())
    options.add_options()(name.c_str(), row.meaning.c_str());
  else
    options.add_options()(name.c_str(), value_of(row), row.meaning.c_str());
}

po::options_description visible_options(const Command& command) {
  po::options_description options("Options");
  for (const OptionRow& row : command.options) add(options, row);
  options.add_options()("help,h", kHelpMeaning);
  return options;
}

void add_arguments(const Command& command, po::options_description& options,
                   po::positional_options_description& positions) {
  for (const ArgumentRow& row : command.arguments) {
    if (row.repeats)
      options.add_options()(row.name.c_str(), po::value<std::vector<std::string>>());
    else
      options.add_options()(row.name.c_str(), po::value<std::string>());
    positions.add(row.name.c_str(), row.repeats ? -1 : 1);
  }
}

}  // namespace

std::string usage_line(const Command& command) {
  std::string line = "lamwright " + command.name;
  for (const ArgumentRow& row : command.arguments) line += " " + row.value + (row.repeats ? "..." : "");
  for (const OptionRow& row : command.options)
    if (row.required)
      line += " " + (row.letter.empty() ? "--" + row.name : "-" + row.letter) + " " + row.value;
  const bool more = std::any_of(command.options.begin(), command.options.end(),
                                [](const OptionRow& row) { return !row.required; });
  return line + (more ? " [OPTION]..." : "");
}

bool parse(const Command& command, const std::vector<std::string>& arguments, po::variables_map& values) {
  const po::options_description visible = visible_options(command);
  po::options_description all = visible;
  po::positional_options_description positions;
  add_arguments(command, all, positions);
  try {
    using namespace po::command_line_style;
    // No guessing of abbreviated options: a typing slip must not become another option.
    po::store(po::command_line_parser(arguments)
                  .options(all)
                  .positional(positions)
                  .style(unix_style & ~allow_guessing)
                  .run(),
              values);
    po::notify(values);
  } catch (const po::error& fault) {
    throw UsageError{fault.what()};
  }
  if (!values.count("help")) return true;
  print(help_text(command, visible));
  return false;
}

std::string required(const po::variables_map& values, const std::string& name, const std::string& shown) {
  if (!values.count(name)) throw UsageError{shown + " is missing"};
  const std::string value = values[name].as<std::string>();
  if (value.empty()) throw UsageError{shown + " is empty"};
  return value;
}

std::vector<std::string> all_of(const po::variables_map& values, const std::string& name,
                                const std::string& shown) {
  if (!values.count(name)) return {};
  const auto all = values[name].as<std::vector<std::string>>();
  for (const std::string& value : all)
    if (value.empty()) throw UsageError{shown + " is empty"};
  return all;
}

std::vector<OptionRow> with(std::vector<OptionRow> rows, const std::vector<OptionRow>& more) {
  rows.insert(rows.end(), more.begin(), more.end());
  return rows;
}

}  // namespace lamwright::cli
