#include "kernel/job/read_curve.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "kernel/profile/drawn/chaining.hpp"
#include "kernel/profile/drawn/choice.hpp"
#include "kernel/profile/drawn/facing.hpp"
#include "kernel/profile/drawn/runs_of.hpp"
#include "kernel/reading/dxf/dxf.hpp"
#include "kernel/reading/points/offsets.hpp"
#include "kernel/reading/points/points.hpp"
#include "kernel/reading/svg/svg.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/toml_text.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr double kDrawnTolerance = 0.05;  // a tenth of what measured points are held to

Outer read_outer(Reader& reader, const Node& node) {
  const std::string text = reader.text(reader.in(node, "outer"));
  return text == "up"      ? Outer::up
         : text == "down"  ? Outer::down
         : text == "left"  ? Outer::left
         : text == "right" ? Outer::right
                           : Outer::automatic;
}

std::optional<LengthUnit> read_file_units(Reader& reader, const Node& node) {
  const Node given = reader.in(node, "units");
  LengthUnit unit = LengthUnit::mm;
  if (!given || !unit_from(reader.text(given), unit)) return std::nullopt;
  return unit;
}

void refuse_fit(Reader& reader, const Node& node, const std::string& text) {
  reader.refuse(node, "read \"" + text + "\"",
                "allowed runs, arc, or arcs and a number from 1 to 200, as \"arcs 3\"");
}

void read_kind(Reader& reader, const Node& node, FitSpec& spec) {
  const std::string text = reader.text(node);
  if (text == "runs") return;
  spec.kind = text == "arc" ? FitKind::arc : FitKind::arcs;
  if (spec.kind == FitKind::arc) return;
  const std::string digits = text.starts_with("arcs ") ? text.substr(5) : "";
  const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), spec.arcs);
  if (read.ec != std::errc() || read.ptr != digits.data() + digits.size() || spec.arcs < 1 || spec.arcs > 200)
    refuse_fit(reader, node, text);
}

std::optional<double> read_noise(Reader& reader, const Node& node) {
  if (!node || (node.node->is_string() && *node.node->value<std::string>() == "auto")) return std::nullopt;
  return reader.length(node);
}

std::optional<Vec2> read_point(Reader& reader, const Node& node) {
  if (reader.size(node) != 2) {
    reader.refuse(node, node ? "read " + value_read(*node.node) : "is missing", "write a point as [x, y]");
    return std::nullopt;
  }
  return Vec2(reader.length(reader.item(node, 0)), reader.length(reader.item(node, 1)));
}

std::optional<KnownEnd> read_end(Reader& reader, const Node& node, const Vec2& measured) {
  if (!node) return std::nullopt;
  if (!node.node->is_table()) {
    reader.refuse(node, "read " + value_read(*node.node),
                  "write {at = [x, y], heading = degrees}, or one of both");
    return std::nullopt;
  }
  KnownEnd out{measured, {}};
  if (const Node at = reader.in(node, "at")) out.point = read_point(reader, at).value_or(measured);
  if (const auto heading = reader.number_if(reader.in(node, "heading"))) out.heading = radians(*heading);
  return out;
}

constexpr std::size_t kMostListed = 10'000;  // in a job; a file may hold more
constexpr const char* kAsFile = "write them into a CSV file and name it";

MeasuredPoints listed_points(Reader& reader, const Node& list) {
  MeasuredPoints out;
  if (!reader.fits(list, kMostListed, "points", kAsFile)) return out;
  for (std::size_t i = 0; i < reader.size(list); ++i)
    if (const auto point = read_point(reader, reader.item(list, i))) out.points.push_back(*point);
  return out;
}

MeasuredPoints read_offsets(Reader& reader, const Node& node) {
  const Node list = reader.in(node, "offsets");
  if (!reader.fits(list, kMostListed, "offsets", kAsFile)) return {};
  OffsetsSpec spec;
  for (std::size_t i = 0; i < reader.size(list); ++i)
    spec.offsets.push_back(reader.length(reader.item(list, i)));
  const std::size_t before = reader.errors().size();
  spec.every = reader.length(reader.in(node, "every"));
  if (reader.errors().size() > before) return {};
  return {points_from(spec), {}, {}};
}

// Empty after an error.
std::string file_name(Reader& reader, const Node& node) {
  const std::string name = reader.text(node);
  if (node.node->is_string() && name.empty())
    reader.refuse(node, "names no file", "give a file name in quotes, as \"front.svg\"");
  return name;
}

MeasuredPoints read_measured(Reader& reader, const Node& node, const Sources& sources) {
  if (reader.in(node, "offsets")) return read_offsets(reader, node);
  const Node points = reader.in(node, "points");
  if (points.node->is_array()) return listed_points(reader, points);
  const std::string file = file_name(reader, points);
  if (file.empty()) return {};
  return read_points(sources.read(file), {file, read_file_units(reader, node).value_or(reader.units())});
}

constexpr double kLeastRadius = 5, kMostRadius = 100000;  // of bends that are written down

// A run of a long free curve may be all but flat, so drawings have no greatest radius; runs through points
// are printed to be written down.
void refuse_radii(const Profile& profile, double least, double most) {
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    const Run& run = profile.runs()[i];
    const double radius = run.straight() ? least : 1 / std::abs(run.curvature);
    if (radius < least || radius > most)
      throw geometry_error("profile",
                           run_name(profile, i) + " at " + point_text(profile.pose(i).point) +
                               " has a radius of " + number(radius) + "; allowed " + number(least) +
                               (std::isfinite(most) ? " to " + number(most) : " or more"),
                           "check the points or the drawing there, and their units");
  }
}

// Of the points that were not left out.
struct Kept {
  double greatest = 0, squares = 0;
  long count = 0;
};

Kept kept(const FitResult& fit) {
  Kept out;
  for (std::size_t i = 0; i < fit.residuals.size(); ++i) {
    if (std::find(fit.suspects.begin(), fit.suspects.end(), i) != fit.suspects.end()) continue;
    out.greatest = std::max(out.greatest, std::abs(fit.residuals[i]));
    out.squares += fit.residuals[i] * fit.residuals[i];
    ++out.count;
  }
  return out;
}

std::string fit_note(const FitResult& fit) {
  const Kept points = kept(fit);
  return counted(points.count, "point") + " fitted by " + counted(long(fit.profile.runs().size()), "run") +
         ": greatest distance " + number(points.greatest) + ", root mean square " +
         number(std::sqrt(points.squares / double(points.count))) + ", noise " + number(fit.noise) + " mm";
}

// The same fit, walked the other way where that is how the profile runs.
FitResult along(FitResult fit, const Profile& profile) {
  if (fit.profile.start().point == profile.start().point) return fit;
  fit.profile = profile;
  std::reverse(fit.accuracy.begin(), fit.accuracy.end());
  for (double& residual : fit.residuals) residual = -residual;
  return fit;
}

std::optional<ProfileReading> read_measured_curve(Reader& reader, const Node& node, const Sources& sources) {
  const std::size_t before = reader.errors().size();
  MeasuredPoints measured = read_measured(reader, node, sources);
  if (reader.errors().size() > before) return std::nullopt;
  if (measured.points.size() < 2) {
    reader.refuse(node, "has " + counted(long(measured.points.size()), "point"), "give at least two");
    return std::nullopt;
  }
  FitSpec spec;
  spec.points = measured.points;
  spec.tolerance = reader.length(reader.in(node, "tolerance"));
  read_kind(reader, reader.in(node, "fit"), spec);
  spec.noise = read_noise(reader, reader.in(node, "noise"));
  spec.start = read_end(reader, reader.in(node, "start"), spec.points.front());
  spec.end = read_end(reader, reader.in(node, "end"), spec.points.back());
  const Outer outer = read_outer(reader, node);
  if (reader.errors().size() > before) return std::nullopt;
  FitResult result = fit(spec);
  std::vector<std::string> notes = std::move(measured.notes);
  notes.push_back(fit_note(result));
  notes.insert(notes.end(), result.notes.begin(), result.notes.end());
  refuse_radii(result.profile, kLeastRadius, kMostRadius);
  Profile profile = facing(result.profile, outer);
  FitResult turned = along(std::move(result), profile);
  return ProfileReading{
      std::move(profile), std::move(measured.points), std::move(turned), {}, std::move(notes)};
}

DrawnFile read_drawn_file(Reader& reader, const Node& node, const Sources& sources) {
  if (const Node svg = reader.in(node, "svg")) {
    const std::string file = file_name(reader, svg);
    if (file.empty()) return {};
    return read_svg(sources.read(file), {file, reader.number(reader.in(node, "dpi")),
                                         reader.number_if(reader.in(node, "scale"))});
  }
  const std::string file = file_name(reader, reader.in(node, "dxf"));
  if (file.empty()) return {};
  return read_dxf(sources.read(file), {file, read_file_units(reader, node)});
}

std::vector<std::string> drawing_notes(const Chained& chain, const RunsResult& runs) {
  std::vector<std::string> out;
  if (chain.doubled > 0)
    out.push_back(counted(long(chain.doubled), "curve") + " left out that lie on another");
  if (chain.largest_gap > kSamePoint)
    out.push_back("largest gap closed " + number(chain.largest_gap, 4) + " mm, at " +
                  point_text(chain.gap_at));
  if (runs.tiny > 0) out.push_back(counted(long(runs.tiny), "piece") + " shorter than 0.05 mm left out");
  if (runs.kink > kTangent)
    out.push_back("joints that turn by up to " + number(degrees(runs.kink), 4) + " degrees taken as tangent");
  const long count = long(runs.profile.runs().size());
  out.push_back(runs.fitted ? counted(count, "run") + (count == 1 ? " follows" : " follow") +
                                  " the drawn curve within " + number(runs.deviation, 4) + " mm"
                            : "lines and arcs of the drawing taken as they are");
  return out;
}

std::optional<ProfileReading> read_drawn_curve(Reader& reader, const Node& node, const Sources& sources) {
  const std::size_t before = reader.errors().size();
  const DrawnFile file = read_drawn_file(reader, node, sources);
  if (reader.errors().size() > before) return std::nullopt;
  const Choice choice{reader.text(reader.in(node, "path")), reader.text(reader.in(node, "layer"))};
  const Node tolerance = reader.in(node, "tolerance");
  RunsSpec spec;
  spec.tolerance = tolerance ? reader.length(tolerance) : kDrawnTolerance;
  spec.fit_kinks = bool(tolerance);
  spec.ease = reader.length_if(reader.in(node, "ease")).value_or(0);
  const double join = reader.length(reader.in(node, "join"));
  const Outer outer = read_outer(reader, node);
  if (reader.errors().size() > before) return std::nullopt;
  const Chained chain = chained(chosen(file, choice), join);
  if (chain.closed)
    throw geometry_error("profile", "is a closed curve; a panel has two ends",
                         "draw the face as an open curve from one end to the other");
  spec.tolerance =
      std::max(spec.tolerance, chain.largest_gap);  // no curve comes nearer to both sides of a gap
  const RunsResult runs = runs_of(chain.pieces, spec);
  refuse_radii(runs.profile, kLeastRadius, INFINITY);
  std::vector<std::string> notes = file.notes;
  for (std::string& note : drawing_notes(chain, runs)) notes.push_back(std::move(note));
  return ProfileReading{facing(runs.profile, outer),
                        {},
                        {},
                        DrawingFit{spec.tolerance, runs.deviation, chain.largest_gap, runs.fitted},
                        std::move(notes)};
}

}  // namespace

bool is_curve(const Reader& reader, const Node& node) {
  for (const char* form : {"points", "offsets", "svg", "dxf"})
    if (reader.in(node, form)) return true;
  return false;
}

std::optional<ProfileReading> read_curve(Reader& reader, const Node& node, const Sources& sources) {
  try {
    if (reader.in(node, "svg") || reader.in(node, "dxf")) return read_drawn_curve(reader, node, sources);
    return read_measured_curve(reader, node, sources);
  } catch (const Error& fault) {
    if (fault.kind() != ErrorKind::geometry)
      reader.keep(fault);
    else
      reader.refuse(node, (fault.where().key == "profile" ? "" : fault.where().key + ": ") + fault.problem(),
                    fault.remedy());
    return std::nullopt;
  }
}

}  // namespace lamwright
