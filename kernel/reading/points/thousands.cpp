#include <utility>

#include "kernel/reading/points/lengths.hpp"

namespace lamwright {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }

std::size_t digits_at_start(std::string_view text) {
  std::size_t n = 0;
  while (n < text.size() && digit(text[n])) ++n;
  return n;
}

struct Grouped {
  int groups = 0;         // of three digits after the leading one to three
  std::string_view rest;  // what follows them
};

Grouped grouped(std::string_view cell, std::string_view separator) {
  if (cell.starts_with('+') || cell.starts_with('-')) cell.remove_prefix(1);
  const std::size_t leading = digits_at_start(cell);
  if (leading < 1 || leading > 3) return {0, cell};
  Grouped out{0, cell.substr(leading)};
  while (out.rest.starts_with(separator) && digits_at_start(out.rest.substr(separator.size())) == 3) {
    out.rest.remove_prefix(separator.size() + 3);
    ++out.groups;
  }
  return out;
}

bool begins_with_sign_and_digit(std::string_view text, char sign) {
  return text.size() >= 2 && text[0] == sign && digit(text[1]);
}

}  // namespace

bool has_thousands(std::string_view cell) {
  for (const auto& [separator, decimal] : {std::pair{".", ','}, {",", '.'}}) {
    const Grouped g = grouped(cell, separator);
    if (g.groups >= 2 || (g.groups == 1 && begins_with_sign_and_digit(g.rest, decimal))) return true;
  }
  // Blank, apostrophes, no-break spaces, thin space.
  for (const std::string_view separator : {" ", "'", "\u2019", "\u00A0", "\u202F", "\u2009"}) {
    const Grouped g = grouped(cell, separator);
    // "1 250/1000" and "5'123/128" are mixed numbers.
    if (g.groups >= 1 && !g.rest.starts_with('/')) return true;
  }
  return false;
}

bool could_be_thousands(std::string_view cell, char sign) {
  const Grouped g = grouped(cell, std::string_view(&sign, 1));
  const auto first = cell.find_first_of("0123456789");
  return g.groups >= 1 && g.rest.empty() && cell[first] != '0';
}

}  // namespace lamwright
