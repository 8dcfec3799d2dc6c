// Comma-separated values as RFC 4180 describes them, for files that people also open in a spreadsheet.
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace lamwright {

struct CsvRecord {
  int line = 0;  // on which it begins, from 1; a field in quotes may hold line breaks
  std::vector<std::string> fields;
};

// UTF-8, with or without a byte-order mark, lines ended by LF or CRLF, the last one also by the end of the
// file. `file` is the name for messages. Throws Error (job) with file and line: a text that is not UTF-8,
// quotes that are not closed or stand amid a field. An empty line is a record of one empty field.
std::vector<CsvRecord> read_csv(std::string_view text, const std::string& file);

// One record without its line end; fields are put in quotes where they must be.
std::string csv_line(const std::vector<std::string>& fields);

}  // namespace lamwright
