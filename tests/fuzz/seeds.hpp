// The files that fuzzing begins from.
#pragma once
#include <filesystem>

#include "tests/fuzz/mutation.hpp"

namespace lamwright::fuzz {

std::string contents(const std::filesystem::path& file);

// All files of a folder by name, and the words of <folder>.dict: one in quotes on a line, with \xNN, \\ and
// \" within; lines that begin with # are remarks. Throws std::runtime_error when there is no seed or no word.
Material seeds(const std::filesystem::path& folder);

}  // namespace lamwright::fuzz
