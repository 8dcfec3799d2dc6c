#include "tests/bench/bench.hpp"

#include <cmath>
#include <iostream>

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

int main() {
  lamwright::bench::bench_bores();
  lamwright::bench::bench_mesh();
  lamwright::bench::bench_seating();
  lamwright::bench::bench_pressure();
  lamwright::bench::bench_job();
  lamwright::bench::bench_page();
  lamwright::bench::bench_fit();
}
