#include "exporters/drawing/bore_table.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/part_view.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

std::string place(double value) { return number(value, 2); }

bool along(const Bore& bore, const Vec3& axis) {
  return std::abs(std::abs(bore.axis.dot(axis)) - 1) < kTangent;
}

std::string sunk(const Bore& bore) {
  if (!bore.counterbore) return "-";
  return diameter_text(bore.counterbore->diameter) + " x " + size_text(bore.counterbore->depth);
}

std::string depth(const Bore& bore) { return bore.depth ? size_text(*bore.depth) : "through"; }

}  // namespace

std::vector<Bore> by_station(const Part& part) {
  std::vector<Bore> out = part.bores();
  std::stable_sort(out.begin(), out.end(), [](const Bore& a, const Bore& b) {
    return std::abs(a.at.x() - b.at.x()) > kSamePoint ? a.at.x() < b.at.x()
                                                      : a.at.y() < b.at.y() - kSamePoint;
  });
  return out;
}

Table beam_table(const Part& beam) {
  Table table{{{"no.", 10},
               {"use", 24, Anchor::left},
               {"from left end", 30},
               {"from centre", 26},
               {"height", 17},
               {"near face", 22},
               {"bore", 16},
               {"depth", 18},
               {"counterbore", 30}},
              {},
              5};
  const double left = beam.box().low.x();
  int count = 0;
  for (const Bore& bore : by_station(beam)) {
    const bool upright = along(bore, {0, 1, 0}), across = along(bore, {0, 0, 1});
    table.rows.push_back({std::to_string(++count), to_text(bore.use), place(bore.at.x() - left),
                          place(bore.at.x()), upright ? "-" : place(bore.at.y()),
                          across ? "-" : place(bore.at.z()), diameter_text(bore.diameter), depth(bore),
                          sunk(bore)});
  }
  return table;
}

Table former_table(const Part& former) {
  Table table{
      {{"no.", 10}, {"use", 26, Anchor::left}, {"X", 22}, {"Y", 22}, {"bore", 82}, {"direction", 24}}, {}, 5};
  int count = 0;
  for (const Bore& bore : by_station(former)) {
    const bool flat = std::abs(former.sheet().local_vector(bore.axis).z()) < kTangent;
    const std::string way = flat ? angle_text(std::atan2(bore.axis.y(), bore.axis.x())) : "across";
    table.rows.push_back({std::to_string(++count), to_text(bore.use), place(bore.at.x()), place(bore.at.y()),
                          bore_text(bore), way});
  }
  return table;
}

}  // namespace lamwright::drawing
