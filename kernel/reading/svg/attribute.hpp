// The text of an attribute and where it stands.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>

#include "shared/error.hpp"

namespace lamwright::svg_reading {

struct Attribute {
  std::string_view text;
  Place where;  // the line on which the text begins; the key names element and attribute
};

// The start of a text of the file, fit for a message of one line.
std::string shown(std::string_view text);

// An error (job) at a byte of the attribute, counted from 0 here and from 1 in the message; the line is the
// one on which that byte stands.
Error fault(const Attribute& attribute, std::size_t byte, const std::string& problem,
            const std::string& remedy);

}  // namespace lamwright::svg_reading
