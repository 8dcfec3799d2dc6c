#include <array>
#include <cmath>

#include "cli/command.hpp"
#include "cli/job_run.hpp"
#include "cli/options.hpp"
#include "cli/profile_input.hpp"
#include "cli/profile_sheet_file.hpp"
#include "cli/terminal.hpp"
#include "exporters/json/profile_json.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::cli {
namespace {

// Fine enough that runs read back end within a thousandth of a mm.
std::string run_toml(const Run& run) {
  if (run.straight()) return "{line = " + number(run.length, 4) + "}";
  return "{bend = " + number(degrees(run.turn()), 6) +
         ", radius = " + number(1 / std::abs(run.curvature), 4) + "}";
}

std::string as_profile(const Profile& profile) {
  std::string text = "# lengths in mm\nprofile = [\n";
  for (const Run& run : profile.runs()) text += "  " + run_toml(run) + ",\n";
  return text + "]\n";
}

// As comments, so that all of the output can be pasted.
std::string as_comments(const ProfileReading& reading) {
  std::string text;
  for (const std::string& note : reading.notes) text += "# " + note + "\n";
  for (std::size_t i = 0; i < reading.fit->accuracy.size(); ++i) {
    const RunAccuracy& accuracy = reading.fit->accuracy[i];
    if (!std::isfinite(accuracy.length)) continue;
    text += "# " + run_name(reading.profile, i) + ": length to " + number(accuracy.length, 2) +
            (reading.profile.runs()[i].straight() ? "" : ", radius to " + number(accuracy.radius, 2)) +
            " (standard deviation)\n";
  }
  return text;
}

std::string as_json(const ProfileReading& reading) {
  const FitResult& fit = *reading.fit;
  Json accuracy = Json::array(), suspects = Json::array();
  for (const RunAccuracy& run : fit.accuracy)
    accuracy.push_back({{"length", json_number(run.length)}, {"radius", json_number(run.radius)}});
  for (const std::size_t i : fit.suspects)
    suspects.push_back({{"point", i + 1},
                        {"at", json_point(reading.points[i])},
                        {"distance", json_number(fit.residuals[i])}});
  return json_text(
      {{"runs", json_runs(reading.profile)},
       {"start",
        {{"at", json_point(reading.profile.start().point)},
         {"heading", json_number(std::remainder(degrees(reading.profile.start().heading), 360))}}},
       {"greatest", json_number(fit.greatest)},
       {"rms", json_number(fit.rms)},
       {"noise", json_number(fit.noise)},
       {"tolerance", json_number(fit.tolerance)},
       {"points", reading.points.size()},
       {"accuracy", accuracy},
       {"suspects", suspects},
       {"read", reading.notes}});
}

std::vector<std::string> fit_words() { return {"runs", "arc"}; }
std::vector<std::string> unit_words() { return {"mm", "cm", "m", "in", "ft"}; }
std::vector<std::string> side_words() { return {"auto", "up", "down", "left", "right"}; }

// The key with the option's value as its text; nothing when it was not given.
std::string key_text(const po::variables_map& values, const char* name) {
  if (!values.count(name)) return {};
  return std::string(", ") + name + " = " + quoted(values[name].as<std::string>());
}

constexpr std::array<const char*, 5> kKeys{"tolerance", "fit", "noise", "units", "outer"};

std::string keys_text(const po::variables_map& values) {
  std::string more;
  for (const char* name : kKeys) more += key_text(values, name);
  return more;
}

// What a job file would say of a key, said of the option.
void refuse_options(const std::vector<Error>& errors) {
  for (const Error& error : errors)
    for (const char* name : kKeys)
      if (error.where().key == std::string("panel.profile.") + name)
        throw UsageError{std::string("--") + name + ": " + error.problem() + "; " + error.remedy()};
}

std::vector<OptionRow> key_options() {
  return {
      {"tolerance", "", "T", "greatest distance of a point from the runs, 0.5 mm unless given"},
      {"fit", "", "KIND", "runs (the fewest), arc, or \"arcs N\"", Completes::words, fit_words},
      {"noise", "", "T", "standard deviation of a point, or auto to estimate it"},
      {"units", "", "UNIT", "of bare numbers in the file: mm, cm, m, in, ft", Completes::words, unit_words},
      {"outer", "", "SIDE", "side of the curve with the outer face: auto, up, down, left, right",
       Completes::words, side_words}};
}

int run(const po::variables_map& values) {
  const std::string file = required(values, "points", "POINTS");
  const ProfileInput read = read_form("points", file, keys_text(values));
  refuse_options(read.result.errors);
  if (!read.result.reading) return tell(read.result.errors);
  write_sheet(values, read, drawing::fit_sheet);
  const ProfileReading& reading = *read.result.reading;
  print(values.count("json") ? as_json(reading) : as_comments(reading) + as_profile(reading.profile));
  return kDone;
}

}  // namespace

Command fit_command() {
  return {"fit",
          "Fits the fewest lines and arcs to measured points (CSV) and prints them as the profile of a job.",
          {{"points", "POINTS", Completes::file}},
          with(with(key_options(), {{"json", "", "", "figures as JSON"}}), sheet_options()),
          run};
}

}  // namespace lamwright::cli
