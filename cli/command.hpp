// The commands of the program, each with the table of what it accepts. Reading command lines, help texts, the
// manual page and completion in a shell all go by these tables.
#pragma once
#include <boost/program_options.hpp>
#include <string>
#include <vector>

namespace lamwright::cli {

namespace po = boost::program_options;

// What a shell offers for a value.
enum class Completes { nothing, file, folder, words };
using Words = std::vector<std::string> (*)();

struct OptionRow {
  std::string name;     // "output", given as --output
  std::string letter;   // "o" for -o; empty for none
  std::string value;    // as shown, "DIR"; empty for an option without one
  std::string meaning;  // a phrase; begins small, ends without a stop
  Completes completes = Completes::nothing;
  Words words = nullptr;  // for Completes::words
  bool repeats = false;   // may be given several times
  bool required = false;  // shown in the usage line
  std::string assumed{};  // the value where the option is not given
};

struct ArgumentRow {
  std::string name;   // by which the command asks for it
  std::string value;  // as shown, "JOB"
  Completes completes = Completes::nothing;
  Words words = nullptr;
  bool repeats = false;
};

struct Command {
  std::string name;     // "build"; of two words: "notebook add"
  std::string summary;  // one line
  std::vector<ArgumentRow> arguments;
  std::vector<OptionRow> options;
  int (*run)(const po::variables_map& values);  // returns an exit status
};

Command build_command();
Command check_command();
Command measure_command();
Command fit_command();
Command list_command();
Command start_command();
Command notebook_add_command();
Command notebook_show_command();

// All of them, in the order of help.
std::vector<Command> commands();

enum ExitStatus {
  kDone = 0,
  kToolFailed = 1,
  kWrongCommandLine = 2,
  kWrongJob = 3,
  kFindingFailed = 4,
  kFileFailed = 5,
  kInterrupted = 130,
  kTerminated = 143
};

}  // namespace lamwright::cli
