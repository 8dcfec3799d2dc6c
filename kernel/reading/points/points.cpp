#include "kernel/reading/points/points.hpp"

#include <algorithm>
#include <optional>

#include "kernel/reading/points/lines.hpp"
#include "kernel/reading/points/reading.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostPoints = 1'000'000;

struct Attempts {
  std::vector<PointsReading> readings;
  std::optional<Error> farthest;  // of those that failed, the one that came farthest
};

Attempts attempts(const TableLines& table, const PointsSpec& spec) {
  Attempts out;
  for (const Separator separator : separators(table.lines, spec.file)) {
    try {
      out.readings.push_back(read_with(separator, table.lines, spec));
    } catch (const Error& error) {
      if (!out.farthest || error.where().line > out.farthest->where().line) out.farthest = error;
    }
  }
  return out;
}

std::string point_text(const Vec2& p) { return "X " + number(p.x()) + " and Y " + number(p.y()) + " mm"; }

void refuse_unless_same(const MeasuredPoints& a, const std::string& a_means, const PointsReading& b,
                        const TableLines& table, const PointsSpec& spec) {
  const auto [p, q] =
      std::mismatch(a.points.begin(), a.points.end(), b.measured.points.begin(), b.measured.points.end());
  if (p == a.points.end() || q == b.measured.points.end()) return;
  const int number = a.lines[std::size_t(p - a.points.begin())];
  const auto line = std::find_if(table.lines.begin(), table.lines.end(),
                                 [&](const TableLine& candidate) { return candidate.number == number; });
  throw job_error({spec.file, number, 0, {}},
                  shown(line->text) + " can be " + point_text(*p) + " (" + a_means + ") or " +
                      point_text(*q) + " (" + b.means + ")",
                  "put semicolons between the cells, or a head over them that names x and y");
}

// All ways to read the table that hold must come to the same points.
MeasuredPoints only_reading(Attempts found, const TableLines& table, const PointsSpec& spec) {
  if (found.readings.empty()) throw *found.farthest;
  const PointsReading& first = found.readings.front();
  for (const PointsReading& other : found.readings)
    refuse_unless_same(first.measured, first.means, other, table, spec);
  return first.measured;
}

void check_count(const MeasuredPoints& measured, const std::string& file) {
  const std::size_t count = measured.points.size();
  if (count < 2)
    throw job_error({file, 0, 0, {}}, "holds " + counted(long(count), "point"), "give at least two points");
  if (count > kMostPoints)
    throw job_error({file, 0, 0, {}}, "holds more than 1 000 000 points", "leave out points");
}

}  // namespace

MeasuredPoints read_points(std::string_view text, const PointsSpec& spec) {
  const TableLines table = table_lines(text, spec.file);
  if (table.lines.empty())
    throw job_error({spec.file, 0, 0, {}}, "holds no points", "give at least two points");
  MeasuredPoints out = only_reading(attempts(table, spec), table, spec);
  check_count(out, spec.file);
  if (table.remarks > 0)
    out.notes.push_back(counted(table.remarks, "line") + " that begin" + (table.remarks == 1 ? "s" : "") +
                        " with # left out");
  return out;
}

}  // namespace lamwright
