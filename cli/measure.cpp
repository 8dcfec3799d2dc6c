#include <cmath>

#include "cli/command.hpp"
#include "cli/files.hpp"
#include "cli/job_run.hpp"
#include "cli/options.hpp"
#include "cli/terminal.hpp"
#include "exporters/json/profile_json.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::cli {
namespace {

// A job file, or the profile itself: "[{line = 120}, {bend = 70, radius = 380}]".
ProfileResult read_input(const std::string& input) {
  if (input.starts_with("[") || input.starts_with("{"))
    return read_profile("panel.profile = " + input, "profile", FileSources(""));
  return read_profile(read_file(input), input, FileSources(input));
}

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

std::string as_json(const Profile& profile) {
  Json changes = Json::array(), inflections = Json::array();
  for (const double s : profile.shape_changes()) changes.push_back(json_number(s));
  for (const double s : profile.inflections()) inflections.push_back(json_number(s));
  return json_text({{"runs", json_runs(profile)},
                    {"girth", json_number(profile.girth())},
                    {"turn", json_number(degrees(profile.turn()))},
                    {"chord", json_number(chord(profile))},
                    {"shape_changes", changes},
                    {"inflections", inflections}});
}

int run(const std::vector<std::string>& arguments) {
  Accepts accepts{po::options_description(), {"profile"}};
  accepts.options.add_options()("json", "figures as JSON");
  po::variables_map values;
  if (!parse(measure_command(), accepts, arguments, values)) return kDone;
  const ProfileResult result = read_input(required(values, "profile", "PROFILE"));
  if (!result.profile) return tell(result.errors);
  print(values.count("json") ? as_json(*result.profile) : as_table(*result.profile));
  return kDone;
}

}  // namespace

Command measure_command() {
  return {"measure", "measure PROFILE [--json]",
          "Measures a profile: a job file, or runs like '[{line = 120}, {bend = 70, radius = 380}]'.", run};
}

}  // namespace lamwright::cli
