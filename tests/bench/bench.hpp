// The tables of the bench, and how a time is taken.
#pragma once
#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

namespace lamwright::bench {

// Milliseconds of the fastest of `times` runs: the one least disturbed by the rest of the machine.
inline double fastest(int times, const std::function<void()>& run) {
  double best = INFINITY;
  for (int i = 0; i < times; ++i) {
    const auto start = std::chrono::steady_clock::now();
    run();
    best = std::min(
        best, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  return best;
}

// Right-aligned columns to the standard output; the first row is the head.
void print_table(const std::string& title, const std::vector<std::vector<std::string>>& rows);

// A beam with counterbored bores, joined as the program does it, and cut.
void bench_bores();

// The same beam as triangles.
void bench_mesh();

// Seating of an upper mould: closed form and samples.
void bench_seating();

// Pressure map and check at growing numbers of stations.
void bench_pressure();

// A whole job, stage by stage.
void bench_job();

// The job sheet, piece by piece.
void bench_page();

// Fits of runs at growing numbers of points and of runs.
void bench_fit();

// A long arch at growing scale, stage by stage.
void bench_large();

}  // namespace lamwright::bench
