#include "cli/options.hpp"

#include <sstream>

#include "cli/terminal.hpp"

namespace lamwright::cli {
namespace {

std::string help_text(const Command& command, const po::options_description& options) {
  std::ostringstream text;
  text << "Usage: lamwright " << command.usage << "\n\n" << command.summary << "\n";
  text << "\n" << options;
  return text.str();
}

}  // namespace

bool parse(const Command& command, const Accepts& accepts, const std::vector<std::string>& arguments,
           po::variables_map& values) {
  po::options_description visible("Options");
  for (const auto& option : accepts.options.options()) visible.add(option);
  visible.add_options()("help,h", "show this text");
  po::options_description all = visible;
  po::positional_options_description positions;
  for (const std::string& name : accepts.positional) {
    all.add_options()(name.c_str(), po::value<std::string>());
    positions.add(name.c_str(), 1);
  }
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

}  // namespace lamwright::cli
