// The program: finds the command, maps errors to exit statuses.
#include <algorithm>
#include <new>

#include "cli/command.hpp"
#include "cli/completion.hpp"
#include "cli/job_run.hpp"
#include "cli/manual.hpp"
#include "cli/options.hpp"
#include "cli/signals.hpp"
#include "cli/terminal.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

using Arguments = std::vector<std::string>;

std::string first_sentence(const std::string& text) {
  const auto end = text.find(". ");
  return end == std::string::npos ? text : text.substr(0, end + 1);
}

std::string help_text() {
  std::vector<std::vector<std::string>> rows;
  for (const Command& command : commands())
    rows.push_back({"  " + command.name, first_sentence(command.summary)});
  return "Usage: lamwright COMMAND ...\n\nPlans presses for curved laminated panels from one job file.\n\n" +
         aligned(rows) +
         "\nlamwright COMMAND --help tells more; lamwright --version prints the version, --manual a page for "
         "man,\n--completion what bash completes by.\n";
}

// "build", "check", "notebook": the first words, each once.
Arguments first_words(const std::vector<Command>& all) {
  Arguments words;
  for (const Command& command : all) {
    const std::string word = command.name.substr(0, command.name.find(' '));
    if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
  }
  return words;
}

// "add", "show"; none for a command of one word.
Arguments second_words(const std::vector<Command>& all, const std::string& first) {
  Arguments words;
  for (const Command& command : all)
    if (command.name.starts_with(first + " ")) words.push_back(command.name.substr(first.size() + 1));
  return words;
}

int run(const Command& command, const Arguments& arguments) {
  po::variables_map values;
  return parse(command, arguments, values) ? command.run(values) : int(kDone);
}

bool asks_for_help(const std::string& word) { return word == "--help" || word == "-h"; }

std::string help_of_group(const std::vector<Command>& all, const std::string& first) {
  std::string text;
  for (const Command& command : all)
    if (command.name.starts_with(first + " "))
      text += "Usage: " + usage_line(command) + "\n  " + command.summary + "\n\n";
  return text + "lamwright " + first + " WORD --help tells more of each.\n";
}

int run_of_group(const std::vector<Command>& all, const std::string& first, const Arguments& arguments) {
  const std::string words = listed(second_words(all, first), " or ");
  if (arguments.empty()) throw UsageError{first + " needs a word: " + words};
  if (asks_for_help(arguments.front())) {
    print(help_of_group(all, first));
    return kDone;
  }
  for (const Command& command : all)
    if (command.name == first + " " + arguments.front())
      return run(command, {arguments.begin() + 1, arguments.end()});
  throw UsageError{first + " " + arguments.front() + " is unknown: " + words};
}

// What the program tells about itself; empty for any other word.
std::string told_about_itself(const std::string& word) {
  if (asks_for_help(word) || word == "help") return help_text();
  if (word == "--version") return "lamwright " LAMWRIGHT_VERSION "\n";
  if (word == "--manual") return manual_page(commands(), LAMWRIGHT_VERSION);
  if (word == "--completion") return bash_completion(commands());
  return {};
}

int dispatched(const Arguments& arguments) {
  const std::vector<Command> all = commands();
  const Arguments names = first_words(all);
  if (arguments.empty()) throw UsageError{"a command is missing: " + listed(names)};
  const std::string& name = arguments.front();
  if (const std::string text = told_about_itself(name); !text.empty()) {
    print(text);
    return kDone;
  }
  const Arguments rest(arguments.begin() + 1, arguments.end());
  for (const Command& command : all)
    if (command.name == name) return run(command, rest);
  if (std::find(names.begin(), names.end(), name) != names.end()) return run_of_group(all, name, rest);
  const auto near = nearest_name(name, names);
  throw UsageError{"\"" + name + "\" is not a command" +
                   (near ? "; did you mean \"" + *near + "\"?" : ": " + listed(names))};
}

// SIGTERM ends with its own status, SIGINT with the shell's.
int status_of_signal() { return caught_signal() == 15 ? kTerminated : kInterrupted; }

int guarded_run(const Arguments& arguments) {
  try {
    return dispatched(arguments);
  } catch (const UsageError& error) {
    message(error.message + "; lamwright --help tells more");
    return kWrongCommandLine;
  } catch (const Cancelled&) {
    message("stopped; nothing was written");
    return status_of_signal();
  } catch (const Error& error) {
    message(error.what());
    return status_of(error);
  } catch (const std::bad_alloc&) {
    message("out of memory");
    return kToolFailed;
  } catch (const std::exception& fault) {
    message(std::string("the tool itself failed: ") + fault.what());
    return kToolFailed;
  }
}

}  // namespace
}  // namespace lamwright::cli

int main(int count, char** values) {
  lamwright::cli::watch_signals();
  return lamwright::cli::guarded_run({values + 1, values + count});
}
