// The commands of the program. Each takes its arguments (without its name) and returns an exit status.
#pragma once
#include <string>
#include <vector>

namespace lamwright::cli {

struct Command {
  std::string name;
  std::string usage;    // "build JOB -o DIR"
  std::string summary;  // one line
  int (*run)(const std::vector<std::string>& arguments);
};

Command build_command();
Command check_command();
Command measure_command();
Command fit_command();
Command list_command();
Command start_command();
Command notebook_command();

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
