// Jobs pressed between two moulds.
#pragma once
#include "tests/support/jobs.hpp"

namespace lamwright::test {

// Without springback, between two moulds; `more` continues the [press] table.
inline std::string two_part(const std::string& more = "", const std::string& caul = "kind = \"bare\"") {
  return "[press]\nmethod = \"two-part\"\nspringback = \"none\"\n" + more + "\n[caul]\n" + caul + "\n";
}

inline std::string panel(const std::string& profile, const std::string& more = "trim = 0") {
  return "width = 400\n" + more + "\nprofile = " + profile;
}

inline const std::string kEqualL = "[{line = 340}, {bend = 90, radius = 60}, {line = 340}]";
inline const std::string kUnequalL = "[{line = 500}, {bend = 90, radius = 60}, {line = 200}]";

}  // namespace lamwright::test
