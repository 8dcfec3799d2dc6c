#include <cmath>

#include "cli/command.hpp"
#include "cli/job_run.hpp"
#include "cli/options.hpp"
#include "cli/profile_input.hpp"
#include "cli/profile_sheet_file.hpp"
#include "cli/terminal.hpp"
#include "exporters/json/profile_json.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::cli {
namespace {

std::string stations_text(const std::vector<double>& stations) {
  std::string text;
  for (const double s : stations) text += (text.empty() ? "" : ", ") + number(s, 4);
  return text.empty() ? "none" : text;
}

std::string as_table(const Profile& profile) {
  std::vector<std::vector<std::string>> rows{{"run", "length", "radius", "turn", "from", "to"}};
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    const Run& run = profile.runs()[i];
    rows.push_back({run_name(profile, i), number(run.length, 4),
                    run.straight() ? "-" : number(1 / std::abs(run.curvature), 4),
                    run.straight() ? "-" : number(degrees(run.turn()), 4), number(profile.station(i), 4),
                    number(profile.station(i + 1), 4)});
  }
  return aligned(rows) + "\ngirth " + number(profile.girth(), 4) + " mm, turn " +
         number(degrees(profile.turn()), 4) + " degrees, chord " + number(chord(profile), 4) + " mm\n" +
         "shape changes at " + stations_text(profile.shape_changes()) + "\ninflections at " +
         stations_text(profile.inflections()) + "\n";
}

// How a measured or drawn curve was followed; nothing for one that was written down.
void add_source(Json& json, const ProfileReading& reading) {
  if (reading.fit)
    json["fit"] = {{"greatest", json_number(reading.fit->greatest)},
                   {"rms", json_number(reading.fit->rms)},
                   {"noise", json_number(reading.fit->noise)},
                   {"tolerance", json_number(reading.fit->tolerance)}};
  if (reading.drawing)
    json["drawing"] = {{"fitted", reading.drawing->fitted},
                       {"deviation", json_number(reading.drawing->deviation)},
                       {"tolerance", json_number(reading.drawing->tolerance)},
                       {"largest_gap", json_number(reading.drawing->largest_gap)}};
  json["read"] = reading.notes;
}

std::string as_json(const ProfileReading& reading) {
  const Profile& profile = reading.profile;
  Json changes = Json::array(), inflections = Json::array();
  for (const double s : profile.shape_changes()) changes.push_back(json_number(s));
  for (const double s : profile.inflections()) inflections.push_back(json_number(s));
  Json json{{"runs", json_runs(profile)},
            {"girth", json_number(profile.girth())},
            {"turn", json_number(degrees(profile.turn()))},
            {"chord", json_number(chord(profile))},
            {"shape_changes", changes},
            {"inflections", inflections}};
  add_source(json, reading);
  return json_text(json);
}

std::string notes_text(const std::vector<std::string>& notes) {
  std::string text;
  for (const std::string& note : notes) text += "Read: " + note + "\n";
  return text;
}

int run(const po::variables_map& values) {
  const std::string input = required(values, "profile", "PROFILE");
  const ProfileInput read = read_profile_input(input);
  if (!read.result.reading) return tell(read.result.errors);
  write_sheet(values, read, drawing::profile_sheet);
  const ProfileReading& reading = *read.result.reading;
  print(values.count("json") ? as_json(reading) : as_table(reading.profile) + notes_text(reading.notes));
  return kDone;
}

}  // namespace

Command measure_command() {
  return {"measure",
          "Measures a profile: a job file, runs like '[{line = 120}, {bend = 70, radius = 380}]', a drawing "
          "(SVG, DXF) or a table of points (CSV).",
          {{"profile", "PROFILE", Completes::file}},
          with({{"json", "", "", "figures as JSON"}}, sheet_options()),
          run};
}

}  // namespace lamwright::cli
