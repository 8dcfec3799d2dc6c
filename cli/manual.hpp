// The manual page, made from the tables of the commands.
#pragma once
#include "cli/command.hpp"

namespace lamwright::cli {

// lamwright(1) in the man macros, without a date: the same bytes for the same program.
std::string manual_page(const std::vector<Command>& commands, const std::string& version);

}  // namespace lamwright::cli
