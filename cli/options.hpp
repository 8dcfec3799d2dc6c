// Command lines, read with Boost.Program_options by the table of a command.
#pragma once
#include <string>
#include <vector>

#include "cli/command.hpp"

namespace lamwright::cli {

// Thrown for a wrong command line; the message is one line.
struct UsageError {
  std::string message;
};

// "lamwright build JOB... -o DIR [OPTION]..."
std::string usage_line(const Command& command);

// Arguments without the command's name. Throws UsageError; prints the help to stdout and returns false when
// it was asked for.
bool parse(const Command& command, const std::vector<std::string>& arguments, po::variables_map& values);

// The value of a required argument. Throws UsageError when it is missing.
std::string required(const po::variables_map& values, const std::string& name, const std::string& shown);

// All values of what may be given several times; none when it was not given. Throws UsageError, which shows
// it as `shown`, for an empty one.
std::vector<std::string> all_of(const po::variables_map& values, const std::string& name,
                                const std::string& shown);

// Appends rows that several commands share.
std::vector<OptionRow> with(std::vector<OptionRow> rows, const std::vector<OptionRow>& more);

}  // namespace lamwright::cli
