// The lines of a table that hold something.
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace lamwright {

struct TableLine {
  int number = 0;         // from 1
  std::string_view text;  // without blanks at its ends; tabs there may stand beside empty cells
};

struct TableLines {
  std::vector<TableLine> lines;
  long remarks = 0;  // lines that begin with #
};

// UTF-8 with or without a byte-order mark, lines ended by LF or CRLF. `text` must outlive the result. Throws
// Error (job) with file and line for other encodings and line ends, and for what is beyond the limits.
TableLines table_lines(std::string_view text, const std::string& file);

// `text` without blanks, tabs and no-break spaces at its ends.
std::string_view trimmed(std::string_view text);

// `text` in quotes, cut short when it is long, as messages show a row or a cell.
std::string shown(std::string_view text);

}  // namespace lamwright
