// The text of an exchange structure (ISO 10303-21): header, strings, ids. No OpenCASCADE.
#pragma once
#include <string>
#include <string_view>

namespace lamwright {

enum class StepSchema { ap214, ap242 };

// "ap214" or "ap242"; throws Error (job) for anything else.
StepSchema step_schema(const std::string& text);

// As FILE_SCHEMA names it: ISO 10303-214 (third edition's module, "automotive design") or ISO 10303-242.
std::string schema_name(StepSchema schema);

struct StepHeader {
  std::string file_name;  // UTF-8, like all texts here
  std::string description;
  std::string date;  // ISO 8601 day; empty: the first day of 1970
  StepSchema schema = StepSchema::ap214;
};

// The whole file around the content of its DATA section.
std::string step_file(const StepHeader& header, std::string_view data);

// A DATA section as the writer made it, with every string on one line and in the standard's own encoding,
// lines broken by one rule, and no negative zeros. In `data` apostrophes and backslashes are doubled already,
// letters beyond ASCII are UTF-8, and long strings are broken by line ends.
std::string tidied_data(std::string_view data);

// Number of instances of a simple entity, name in capitals, in tidied data.
int entity_count(std::string_view data, std::string_view entity);

}  // namespace lamwright
