// Commented job files to begin from, made from the key table.
#pragma once
#include <string>
#include <vector>

namespace lamwright {

// A shape of panel that a job file can begin from.
struct StartShape {
  std::string name;     // "arch"
  std::string meaning;  // for people
};
const std::vector<StartShape>& start_shapes();  // in the order in which people read them

// The file for a shape of start_shapes(). Ends with a newline.
std::string start_text(const std::string& shape);

// The key table as a Markdown table, for the documentation.
std::string keys_as_markdown();

}  // namespace lamwright
