// The one table of job-file keys: reader, errors, `start` files and documentation are made from it.
#pragma once
#include <string>
#include <vector>

namespace lamwright {

// What a key takes. Lengths, forces and pressures may be texts with units; `mixed` is a quantity or a word.
enum class KeyType { length, number, integer, text, choice, flag, force, pressure, list, table, mixed };

// `path` is dotted, list items written "[]": "layup.plies[].thickness". `fallback` is TOML as `start` prints
// it (empty: none or required). Lengths in mm, forces in N, pressures in MPa, angles in degrees.
struct KeyRow {
  std::string path;                  // unique
  KeyType type = KeyType::text;      // decides which of the members below count
  std::string fallback;              // lengths in it are mm
  double least = 0;                  // inclusive
  double most = 0;                   // inclusive; both 0 where there is no range
  std::vector<std::string> choices;  // words that are allowed
  std::string meaning;               // for people, a clause
};

const std::vector<KeyRow>& job_keys();  // the program's own; those of press methods and exporters come on top

}  // namespace lamwright
