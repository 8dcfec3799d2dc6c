// What holds for everything that a job file is refused for.
#pragma once
#include <vector>

#include "tests/fuzz/target.hpp"

namespace lamwright::fuzz {

inline void check_errors(const std::vector<Error>& errors) {
  ensure(errors.size() <= 20, "at most twenty errors are told");
  for (const Error& error : errors) {
    check_refusal(error);
    ensure(!to_text(error.where()).empty(), "an error has a place");
    ensure(!error.problem().empty(), "an error says what is wrong");
  }
}

}  // namespace lamwright::fuzz
