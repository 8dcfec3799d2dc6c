// A lay-up in words: by these a notebook knows pieces of one kind again.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/panel/panel.hpp"

namespace lamwright {

// Plies alike that lie on one another.
struct LayupRun {
  int count = 1;         // above 0
  std::string name;      // trade row
  double thickness = 0;  // of one ply, mm
  double grain = 0;      // radians from the girth direction
};

// A lay-up as people name it: pieces of one name, and one glue, are fitted together.
struct LayupWords {
  std::vector<LayupRun> runs;  // inner to outer
  double glue_line = 0;        // thickness of one, mm
};

LayupWords layup_words(const std::vector<Ply>& plies, double glue_line);  // neighbours alike become one run

// "7 x birch-yellow 1.5 along + glue line 0.1"; runs joined by " + ", grain along, across or in degrees, the
// glue line only where it has a thickness. Thicknesses to 1e-7 mm, angles to 1e-3 degrees.
std::string layup_key(const LayupWords& words);
std::string layup_key(const std::vector<Ply>& plies, double glue_line);  // of layup_words()

// The other way round; nothing for words that are not of this form.
std::optional<LayupWords> words_of_key(const std::string& key);

}  // namespace lamwright
