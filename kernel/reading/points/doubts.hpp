// Watches the rows of a table for a second way to read all of them.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "kernel/reading/points/head.hpp"
#include "kernel/reading/points/lengths.hpp"

namespace lamwright {

class Doubts {
 public:
  Doubts(const Columns& columns, Separator separator) : columns_(columns), separator_(separator) {}

  void see(const TableLine& line, const std::vector<std::string>& cells);
  // Throws Error (job) with file and line where every row can be read in another way: commas between cells
  // that could be decimal commas, a first column that could number the points, 1.000 that could be a
  // thousand.
  void settle(DecimalSign sign, const std::string& file) const;

 private:
  void see_commas(const std::vector<std::string>& cells);
  void see_count(const std::string& cell);
  void see_thousands(const TableLine& line, const std::string& cell);
  void refuse_commas(const std::string& file) const;
  void refuse_count(const std::string& file) const;
  void refuse_thousands(const std::string& file) const;

  Columns columns_;
  Separator separator_;
  TableLine first_;
  std::vector<std::string> first_cells_;
  bool decimal_commas_ = true;  // every row is two numbers with commas within
  bool counts_ = true;          // the first column goes up by one
  long last_count_ = 0;
  bool thousands_ = true;  // every number with a decimal sign has three decimals, every other is below 1000
  bool whole_seen_ = false;
  TableLine thousand_line_;
  std::string thousand_;
  long rows_ = 0;
};

}  // namespace lamwright
