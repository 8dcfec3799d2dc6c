// Tables of points: whatever the bytes are, they are read or refused.
#include <cmath>

#include "kernel/reading/points/points.hpp"
#include "tests/fuzz/target.hpp"

namespace {

void check(const lamwright::MeasuredPoints& measured) {
  using lamwright::ensure;
  ensure(measured.points.size() >= 2, "two points at least");
  ensure(measured.points.size() == measured.lines.size(), "a line for each point");
  ensure(!measured.notes.empty(), "how the table was taken is said");
  for (std::size_t i = 0; i < measured.points.size(); ++i) {
    ensure(measured.points[i].array().abs().maxCoeff() <= 1e10, "points are finite and near");
    ensure(i == 0 || measured.lines[i] > measured.lines[i - 1], "points stand in the order of the lines");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace lamwright;
  return fuzz::offer([&] { check(read_points(fuzz::text_of(data, size), {"site.csv", LengthUnit::mm})); });
}
