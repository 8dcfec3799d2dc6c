#include "kernel/job/read_profile.hpp"

#include <array>
#include <cmath>
#include <set>

#include "kernel/job/read_curve.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/toml_text.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr const char* kForms =
    "allowed: a list of {line = L} and {bend = degrees, radius = R}, {chord, rise}, {three_points}, "
    "{points}, "
    "{offsets, every}, {svg} or {dxf}";

std::optional<Run> read_run(Reader& reader, const Node& node) {
  const Node line = reader.in(node, "line"), bend = reader.in(node, "bend"),
             radius = reader.in(node, "radius");
  if (line && !bend && !radius) return Run{reader.length(line), 0};
  if (!line && bend && radius) {
    const double turn = reader.number(bend);
    const double r = reader.length(radius);
    if (std::abs(turn) < 0.01) {
      reader.refuse(bend, "read " + number(turn, 6),
                    "allowed 0.01 to 355 degrees either way; positive for a crown, negative for a hollow");
      return std::nullopt;
    }
    return Run{radians(std::abs(turn)) * r, (turn > 0 ? 1 : -1) / r};
  }
  reader.refuse(node, "is neither a line nor a bend", "write {line = 120} or {bend = 70, radius = 380}");
  return std::nullopt;
}

std::optional<Profile> read_runs(Reader& reader, const Node& list) {
  constexpr std::size_t kMostRuns = 2000;
  if (reader.size(list) == 0 || reader.size(list) > kMostRuns) {
    reader.refuse(list, "has " + counted(long(reader.size(list)), "run"), "allowed 1 to 2000");
    return std::nullopt;
  }
  std::vector<Run> runs;
  for (std::size_t i = 0; i < reader.size(list); ++i)
    if (const auto run = read_run(reader, reader.item(list, i))) runs.push_back(*run);
  if (runs.size() != reader.size(list) || !reader.errors().empty()) return std::nullopt;
  try {
    return Profile({}, std::move(runs));
  } catch (const Error& fault) {
    reader.refuse(list, fault.where().key + " " + fault.problem(), fault.remedy());
    return std::nullopt;
  }
}

// The arc over a chord: half its angle is 2 atan(2 rise / chord).
std::optional<Profile> arc_over(Reader& reader, const Node& node, double chord, double rise) {
  const double turn = 4 * std::atan(2 * std::abs(rise) / chord);
  const double radius = chord * chord / (8 * std::abs(rise)) + std::abs(rise) / 2;
  if (!(degrees(turn) >= 0.01 && degrees(turn) <= 355 && radius >= 5 && radius <= 100000)) {
    reader.refuse(
        node, "is an arc of radius " + number(radius) + " through " + number(degrees(turn), 2) + " degrees",
        "allowed radius 5 to 100000 mm, 0.01 to 355 degrees");
    return std::nullopt;
  }
  return Profile({}, {{radius * turn, (rise > 0 ? 1 : -1) / radius}});
}

std::optional<Profile> read_three_points(Reader& reader, const Node& node) {
  std::array<Vec2, 3> p;
  for (std::size_t i = 0; i < 3; ++i)
    for (int axis = 0; axis < 2; ++axis) {
      const Node item = reader.item(reader.item(node, i), std::size_t(axis));
      if (reader.size(node) != 3 || !item || !item.node->is_number() ||
          !std::isfinite(number_at(*item.node))) {
        reader.refuse(node, "is not three points",
                      "write [[0, 0], [600, 150], [1200, 0]] from left to right");
        return std::nullopt;
      }
      p[i][axis] = number_at(*item.node) * factor(reader.units());
    }
  if (p[2].x() < p[0].x()) std::swap(p[0], p[2]);  // from left to right, as points of a table
  const Vec2 a = p[1] - p[0], b = p[2] - p[0];
  const double twice = cross(a, b);
  if (b.norm() < kSamePoint || std::abs(twice) < kSamePoint * b.norm()) {
    reader.refuse(node, "lies on one straight line", "give a point off the chord, or a line");
    return std::nullopt;
  }
  // The angle at the middle point is half the angle of the arc on its far side.
  const Vec2 u = p[0] - p[1], v = p[2] - p[1];
  const double inscribed = std::atan2(std::abs(cross(u, v)), u.dot(v));
  const double rise = b.norm() / 2 * std::tan((kPi - inscribed) / 2);
  return arc_over(reader, node, b.norm(), twice > 0 ? -rise : rise);
}

struct Form {
  const char* key;
  std::vector<std::string> extras;  // that have a use with it, beside its own
};

const std::vector<Form>& forms() {
  static const std::vector<Form> all{
      {"rise", {"chord"}},
      {"three_points", {}},
      {"points", {"tolerance", "fit", "noise", "start", "end", "units", "outer"}},
      {"offsets", {"every", "tolerance", "fit", "noise", "start", "end", "outer"}},
      {"svg", {"path", "layer", "join", "ease", "tolerance", "scale", "dpi", "outer"}},
      {"dxf", {"path", "layer", "join", "ease", "tolerance", "units", "outer"}}};
  return all;
}

// Exactly one form, and nothing that belongs to another.
bool one_form(Reader& reader, const Node& node) {
  const Form* found = nullptr;
  for (const Form& form : forms()) {
    const Node given = reader.in(node, form.key);
    if (!given) continue;
    if (found) {
      reader.refuse(given, std::string("is given beside ") + found->key, "give one form of profile");
      return false;
    }
    found = &form;
  }
  if (!found) return true;
  std::set<std::string> useless;
  for (const Form& form : forms()) useless.insert(form.extras.begin(), form.extras.end());
  for (const std::string& extra : found->extras) useless.erase(extra);
  for (const std::string& extra : useless)
    if (const Node given = reader.in(node, extra)) {
      reader.refuse(given, std::string("has no use with ") + found->key, "take it out");
      return false;
    }
  return true;
}

std::optional<ProfileReading> written(const std::optional<Profile>& profile) {
  if (!profile) return std::nullopt;
  return ProfileReading{*profile, {}, {}, {}, {}};
}

}  // namespace

std::optional<ProfileReading> read_profile_node(Reader& reader, const Node& node, const Sources& sources) {
  if (!node) {
    reader.refuse_missing(node);
    return std::nullopt;
  }
  if (node.node->is_array()) return written(read_runs(reader, node));
  if (!one_form(reader, node)) return std::nullopt;
  if (is_curve(reader, node)) return read_curve(reader, node, sources);
  const Node chord = reader.in(node, "chord"), rise = reader.in(node, "rise"),
             points = reader.in(node, "three_points");
  if (points) return written(read_three_points(reader, points));
  if (!chord || !rise) {
    reader.refuse(node, "is not a profile", kForms);
    return std::nullopt;
  }
  const double c = reader.length(chord), r = reader.length(rise);
  return reader.errors().empty() ? written(arc_over(reader, node, c, r)) : std::nullopt;
}

}  // namespace lamwright
