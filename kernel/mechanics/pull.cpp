#include "kernel/mechanics/pull.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

bool is_level(const Profile& line) {
  const Vec2 along = line.end().point - line.start().point;
  return along.x() > 0 && std::abs(along.y()) <= kTangent * along.x();
}

double share(double angle) { return std::max(0.0, std::cos(angle)); }

}  // namespace

double RunPull::greatest() const { return std::max(std::abs(at_start), std::abs(at_end)); }

double RunPull::least() const {
  if (at_start * at_end <= 0) return 0;
  return std::min(std::abs(at_start), std::abs(at_end));
}

double RunPull::least_share() const { return share(std::min(kPi, greatest())); }
double RunPull::greatest_share() const { return share(std::min(kPi, least())); }

std::vector<RunPull> run_pulls(const Profile& posed) {
  std::vector<RunPull> out;
  for (std::size_t i = 0; i < posed.runs().size(); ++i)
    out.push_back({posed.pose(i).heading, posed.pose(i + 1).heading});
  return out;
}

Headings headings(const Profile& line) {
  Headings out{line.start().heading, line.start().heading};
  for (std::size_t i = 1; i <= line.runs().size(); ++i) {
    out.least = std::min(out.least, line.pose(i).heading);
    out.greatest = std::max(out.greatest, line.pose(i).heading);
  }
  return out;
}

double greatest_angle(const Profile& line, double axis) {
  const Headings range = headings(pull_upright(line, axis));
  return std::max(std::abs(range.least), std::abs(range.greatest));
}

double bisector(const Profile& level) {
  ensure(is_level(level), "a bisector is counted from a level chord");
  const Headings range = headings(level);
  return -(range.least + range.greatest) / 2;
}

std::optional<Headings> clearing_axes(const Profile& level, double most) {
  ensure(is_level(level), "axes are counted from a level chord");
  const Headings range = headings(level);
  const Headings axes{-most - range.least, most - range.greatest};
  if (axes.least > axes.greatest) return std::nullopt;
  return axes;
}

Profile pull_upright(const Profile& line, double axis) {
  const Vec2 half = chord(line) / 2 * direction(axis);
  return line.posed({-half, levelled(line).start().heading + axis});
}

}  // namespace lamwright
