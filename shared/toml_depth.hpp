// How deep a TOML file goes, seen before it is parsed: the parser's tables are undone one within another, and
// some hundred thousand of them leave the program without a stack.
#pragma once
#include <string>
#include <string_view>

namespace lamwright {

inline constexpr int kMostLevels = 32;  // of lists and tables in one another, and of a key's parts

// Throws Error (job) with the line. Faults of other kinds are left to the parser.
void refuse_deep(std::string_view toml, const std::string& file);

}  // namespace lamwright
