#include "kernel/reading/dxf/tally.hpp"

#include "kernel/reading/dxf/names.hpp"
#include "shared/number.hpp"

namespace lamwright::dxf_reading {
namespace {

constexpr std::size_t kNamed = 12, kCounted = 1000;

std::string entities(std::size_t count) {
  return count == 1 ? "1 entity" : std::to_string(count) + " entities";
}

std::size_t total(const Counts& counts) {
  std::size_t sum = 0;
  for (const auto& [name, count] : counts) sum += count;
  return sum;
}

std::string listing(const Counts& counts) {
  std::string out;
  std::size_t named = 0;
  for (const auto& [name, count] : counts) {
    if (named++ == kNamed) return out + " and " + std::to_string(counts.size() - kNamed) + " more";
    out += (out.empty() ? "" : ", ") + std::to_string(count) + " " + shown(name);
  }
  return out;
}

}  // namespace

void count(Counts& counts, const std::string& name) {
  ++counts[counts.size() < kCounted || counts.contains(name) ? name : "others"];
}

std::vector<std::string> Tally::notes() const {
  std::vector<std::string> out;
  const auto add = [&](std::size_t count, const std::string& note) {
    if (count > 0) out.push_back(note);
  };
  add(kinds.size(), "left out, since they are no curves: " + listing(kinds));
  add(hidden.size(), "left out, since their layers are off or frozen: " + entities(total(hidden)) +
                         " (on layer: " + listing(hidden) + ")");
  add(invisible, "left out, since not visible: " + entities(invisible));
  add(on_paper, "left out, since on paper space: " + entities(on_paper));
  add(missing_blocks.size(), "left out, since the file does not hold the block: " + listing(missing_blocks));
  add(without_length, "left out, since without length: " + entities(without_length));
  add(repeated_points,
      "points nearer than 0.001 mm to the one before, merged: " + std::to_string(repeated_points));
  add(fit_points_only,
      "drawn as cubics of continuous curvature through their fit points, since they have no control points "
      "(near "
      "their ends the program that made them may show another curve): " +
          counted(long(fit_points_only), "SPLINE"));
  return out;
}

}  // namespace lamwright::dxf_reading
