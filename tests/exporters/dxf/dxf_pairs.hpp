// A DXF text read back pair by pair, by nothing of the writer's.
#pragma once
#include <catch2/catch.hpp>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace lamwright::test {

struct DxfRecord {
  std::string type;
  std::vector<std::pair<int, std::string>> groups;

  std::vector<std::string> all(int code) const {
    std::vector<std::string> out;
    for (const auto& [c, value] : groups)
      if (c == code) out.push_back(value);
    return out;
  }
  // The first of that code; a text that no file holds when there is none.
  std::string first(int code) const {
    const auto found = all(code);
    return found.empty() ? "(none)" : found.front();
  }
};

// Every record of every section, in order; the section names and header variables are records too.
inline std::vector<DxfRecord> dxf_records(const std::string& text) {
  std::istringstream lines(text);
  std::vector<DxfRecord> out;
  std::string code, value;
  while (std::getline(lines, code)) {
    REQUIRE(std::getline(lines, value));
    REQUIRE(code.find_first_not_of(" 0123456789") == std::string::npos);
    if (const int number = std::stoi(code); number == 0 || number == 9)
      out.push_back({value, {}});
    else
      out.back().groups.emplace_back(number, value);
  }
  REQUIRE(!out.empty());
  REQUIRE(out.back().type == "EOF");
  return out;
}

inline std::vector<DxfRecord> of_type(const std::vector<DxfRecord>& records, const std::string& type) {
  std::vector<DxfRecord> out;
  for (const DxfRecord& record : records)
    if (record.type == type) out.push_back(record);
  return out;
}

// Types of the records in the ENTITIES section.
inline std::vector<std::string> entity_types(const std::vector<DxfRecord>& records) {
  std::vector<std::string> out;
  bool inside = false;
  for (const DxfRecord& record : records) {
    if (record.type == "ENDSEC") inside = false;
    if (inside) out.push_back(record.type);
    if (record.type == "SECTION" && record.first(2) == "ENTITIES") inside = true;
  }
  return out;
}

}  // namespace lamwright::test
