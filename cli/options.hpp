// Command lines, read with Boost.Program_options.
#pragma once
#include <boost/program_options.hpp>
#include <string>
#include <vector>

#include "cli/command.hpp"

namespace lamwright::cli {

// Thrown for a wrong command line; the message is one line.
struct UsageError {
  std::string message;
};

namespace po = boost::program_options;

// What a command accepts: options and, in order, its positional arguments by name (each at most once).
struct Accepts {
  po::options_description options;
  std::vector<std::string> positional;
};

// Adds --help. Throws UsageError; prints the help to stdout and returns false when it was asked for.
bool parse(const Command& command, const Accepts& accepts, const std::vector<std::string>& arguments,
           po::variables_map& values);

// The value of a required argument. Throws UsageError when it is missing.
std::string required(const po::variables_map& values, const std::string& name, const std::string& shown);

}  // namespace lamwright::cli
