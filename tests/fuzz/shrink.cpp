#include "tests/fuzz/shrink.hpp"

#include <algorithm>

namespace lamwright::fuzz {

std::string shrunk(std::string input, const std::function<bool(const std::string&)>& fails) {
  int tries = 400;
  for (std::size_t piece = input.size() / 2; piece > 0; piece /= 2)
    for (std::size_t at = 0; at < input.size() && tries > 0;) {
      const std::string less = input.substr(0, at) + input.substr(std::min(at + piece, input.size()));
      --tries;
      if (fails(less))
        input = less;
      else
        at += piece;
    }
  return input;
}

}  // namespace lamwright::fuzz
