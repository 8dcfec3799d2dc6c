#include "tests/bench/bench.hpp"

#include <cmath>
#include <iostream>
#include <utility>

#include "tests/bench/large_job.hpp"

namespace lamwright::bench {

void print_table(const std::string& title, const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths(rows.front().size());
  for (const auto& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], row[i].size());
  std::cout << title << '\n';
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i)
      std::cout << std::string(widths[i] - row[i].size() + 2, ' ') << row[i];
    std::cout << '\n';
  }
  std::cout << std::endl;
}

}  // namespace lamwright::bench

namespace {

using Table = std::pair<std::string, void (*)()>;

const std::vector<Table>& tables() {
  using namespace lamwright::bench;
  static const std::vector<Table> all{
      {"bores", bench_bores}, {"mesh", bench_mesh}, {"seating", bench_seating}, {"pressure", bench_pressure},
      {"job", bench_job},     {"page", bench_page}, {"fit", bench_fit},         {"large", bench_large}};
  return all;
}

}  // namespace

// Without arguments all tables, else those named; `print SCALE` writes the large job's file instead.
int main(int count, char** given) {
  const std::vector<std::string> arguments(given + 1, given + count);
  if (arguments.size() == 2 && arguments[0] == "print") {
    std::cout << lamwright::bench::large_job(std::stoi(arguments[1]));
    return 0;
  }
  for (const auto& [name, table] : tables())
    if (arguments.empty() || std::find(arguments.begin(), arguments.end(), name) != arguments.end()) table();
}
