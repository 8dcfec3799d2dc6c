// TOML that people wrote: made plain, parsed, and shown again in messages.
#pragma once
#include <string>
#include <string_view>

#include "shared/toml.hpp"

namespace lamwright {

// Without a byte-order mark and with LF line ends, so that files from any editor read alike. `file` is the
// name for messages, `remedy` what to do about a file of over 4 MB. Throws Error (job) for a text that is not
// UTF-8.
std::string plain_toml(std::string_view text, const std::string& file, const std::string& remedy);

// Throws Error (job) with line and column.
toml::table parsed_toml(std::string_view text, const std::string& file);

// The number at a node that is one. A whole number beyond 2^53 is rounded, which toml++ itself refuses to do.
double number_at(const toml::node& node);

// What stands at a node, for a message: "\"birch\"", "12.5", "a list".
std::string value_read(const toml::node& node);

// A byte that does not print and would break a line, a drawing or a name.
bool has_control_character(std::string_view text);

}  // namespace lamwright
