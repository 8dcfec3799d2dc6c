// The one table of job-file keys: reader, errors, `start` files and documentation are made from it.
#pragma once
#include <string>
#include <vector>

namespace lamwright {

enum class KeyType { length, number, integer, text, choice, flag, force, pressure, list, table, mixed };

// `path` is dotted, list items written "[]": "layup.plies[].thickness". `fallback` is TOML as `start` prints
// it (empty: none or required). Lengths in mm, forces in N, pressures in MPa, angles in degrees.
struct KeyRow {
  std::string path;
  KeyType type = KeyType::text;
  std::string fallback;
  double least = 0;
  double most = 0;
  std::vector<std::string> choices;
  std::string meaning;
};

const std::vector<KeyRow>& job_keys();

}  // namespace lamwright
