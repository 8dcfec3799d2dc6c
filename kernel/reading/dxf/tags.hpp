// The pairs a DXF text is made of: a group code on one line, its value on the next.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "shared/error.hpp"

namespace lamwright::dxf_reading {

struct Tag {
  int code = 0;
  std::string_view value;  // without blanks at its ends; a view of the text
  int line = 0;            // on which the value stands, from 1
};

// Walks through a text whose lines end with CR, LF or CRLF. A copy keeps its place. Text and name of the file
// must outlive it.
class Tags {
 public:
  Tags(std::string_view text, const std::string& file) : rest_(text), file_(&file) {}

  // The next pair; nothing at the end of the text. Comments (code 999) are passed over. Throws Error (job)
  // for a code that is none and for a code without a value.
  std::optional<Tag> next();

  int line() const { return line_; }  // of the last line read
  const std::string& file() const { return *file_; }

 private:
  std::string_view next_line();
  Tag pair();

  std::string_view rest_;
  const std::string* file_;
  int line_ = 0;
};

// Error (job) at a line of a file.
Error fault(const std::string& file, int line, std::string problem, std::string remedy = {});

}  // namespace lamwright::dxf_reading
