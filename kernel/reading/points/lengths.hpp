// Lengths as they stand in the cells of a table.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "shared/quantity.hpp"

namespace lamwright {

enum class DecimalSign { none_seen, point, comma };

// Reads the cells of one table from the first row to the last; the decimal sign is that of the first cell
// that has one. Throws Error (job) with file and line for a cell that is no length or lies beyond 1e10 mm,
// for the other decimal sign later on, and for separators of thousands.
class CellLengths {
 public:
  explicit CellLengths(const std::string& file) : file_(file) {}

  double read(const std::string& cell, LengthUnit bare, int line);  // mm; cells that are not empty

  DecimalSign sign() const { return sign_; }
  bool bare_seen() const { return bare_seen_; }  // a length other than 0 without a unit of its own
  // How ambiguous spellings were taken, the first of them and how many more.
  std::vector<std::string> notes() const;

 private:
  std::string with_points(const std::string& cell, int line);
  Reading reading(const std::string& cell, LengthUnit bare, int line);
  void see_note(const std::string& note, int line);

  std::string file_;
  DecimalSign sign_ = DecimalSign::none_seen;
  int sign_line_ = 0;
  std::string sign_cell_;
  bool bare_seen_ = false;
  std::string first_note_;
  long more_notes_ = 0;
};

// Whether a length could begin like this: a digit, a sign, a decimal sign, a fraction in one character.
bool begins_like_length(std::string_view cell);

// Whether it begins with a fraction: 3/4, ½.
bool begins_like_fraction(std::string_view cell);

// Whether a number is grouped by thousands beyond doubt: 1.234,5 or 1,234.5 or 1'234 or 1 234 or 1.234.567.
bool has_thousands(std::string_view cell);

// Whether a number could be grouped by thousands, the only separator being `sign`: 1.234 or 12.345.678.
bool could_be_thousands(std::string_view cell, char sign);

}  // namespace lamwright
