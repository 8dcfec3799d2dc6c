// A look at the text before it is parsed.
#pragma once
#include <string>
#include <string_view>

namespace lamwright::svg_reading {

// Refuses, by an Error (job) with the line, what is no text in UTF-8, holds a zero byte or more than 64 MB,
// and what would fill a parser's memory or keep it busy for ever: more than 2 000 000 elements and
// attributes, a tag of more than 200 attributes, a numeric reference without an end. Other faults of the
// markup are left to the parser.
void check_markup(std::string_view text, const std::string& file);

}  // namespace lamwright::svg_reading
