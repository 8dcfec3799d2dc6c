// The program: finds the command, maps errors to exit statuses.
#include <algorithm>
#include <array>
#include <new>

#include "cli/command.hpp"
#include "cli/job_run.hpp"
#include "cli/options.hpp"
#include "cli/signals.hpp"
#include "cli/terminal.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

std::array<Command, 7> commands() {
  return {build_command(), check_command(), measure_command(), fit_command(),
          list_command(),  start_command(), notebook_command()};
}

std::string help_text() {
  std::vector<std::vector<std::string>> rows;
  for (const Command& command : commands()) rows.push_back({"  " + command.name, command.summary});
  return "Usage: lamwright COMMAND ...\n\nPlans presses for curved laminated panels from one job file.\n\n" +
         aligned(rows) + "\nlamwright COMMAND --help tells more; lamwright --version prints the version.\n";
}

std::vector<std::string> command_names() {
  std::vector<std::string> names;
  for (const Command& command : commands()) names.push_back(command.name);
  return names;
}

int dispatched(const std::vector<std::string>& arguments) {
  if (arguments.empty()) throw UsageError{"a command is missing: " + listed(command_names())};
  const std::string& name = arguments.front();
  if (name == "--help" || name == "-h" || name == "help") {
    print(help_text());
    return kDone;
  }
  if (name == "--version") {
    print("lamwright " LAMWRIGHT_VERSION "\n");
    return kDone;
  }
  for (const Command& command : commands())
    if (command.name == name) return command.run({arguments.begin() + 1, arguments.end()});
  const std::vector<std::string> names = command_names();
  const auto near = nearest_name(name, names);
  throw UsageError{"\"" + name + "\" is not a command" +
                   (near ? "; did you mean \"" + *near + "\"?" : ": " + listed(names))};
}

// SIGTERM ends with its own status, SIGINT with the shell's.
int status_of_signal() { return caught_signal() == 15 ? kTerminated : kInterrupted; }

int guarded_run(const std::vector<std::string>& arguments) {
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
