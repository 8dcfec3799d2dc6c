// What a shell completes by, made from the tables of the commands.
#pragma once
#include "cli/command.hpp"

namespace lamwright::cli {

// A script for bash to be read with `source`, or put into its folder of completions as "lamwright".
std::string bash_completion(const std::vector<Command>& commands);

}  // namespace lamwright::cli
