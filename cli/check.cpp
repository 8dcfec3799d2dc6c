#include "cli/options.hpp"
#include "cli/plugins.hpp"
#include "cli/results.hpp"
#include "cli/terminal.hpp"
#include "exporters/json/findings_json.hpp"

namespace lamwright::cli {
namespace {

Json json_of(const Evaluation& result) {
  return {{"schema", 1},
          {"title", result.job->title},
          {"method", result.plan->method},
          {"findings", json_findings(result.findings)},
          {"notes", result.plan->notes},
          {"read", result.job->notes}};
}

std::string as_table(const Evaluation& result) {
  std::string text = "Press: " + result.plan->method + ". " + result.plan->reason + "\n\n" +
                     findings_table(result.findings) + "\n" + verdict_counts(result.findings) + "\n";
  for (const std::string& note : result.plan->notes) text += "Note: " + note + "\n";
  text += work_text(result);
  for (const std::string& note : result.job->notes) text += "Read: " + note + "\n";
  return text;
}

int check_one(const Run& run, const po::variables_map& values, const Registry& registry) {
  StageProgress progress;
  const Evaluation result = evaluated(run.input, registry, progress);
  if (!result.errors.empty()) return tell(result.errors);
  print(values.count("json") ? json_text(json_of(result)) : as_table(result));
  return status_of(result, false);
}

Json json_of(const Run& run, const Evaluation& result) {
  Json set = Json::object(), errors = Json::array();
  for (const Setting& setting : run.input.settings) set[setting.path] = setting.value;
  for (const Error& error : result.errors) errors.push_back(error.what());
  Json json{{"run", run.name}, {"job", run.input.file}, {"set", set}, {"errors", errors}};
  if (result.errors.empty()) json.update(json_of(result));
  return json;
}

int check_series(const std::vector<Run>& runs, const po::variables_map& values, const Registry& registry) {
  StageProgress progress;
  std::vector<Outcome> outcomes;
  Json all = Json::array();
  for (const Run& run : runs) {
    const Evaluation result = evaluated(run.input, registry, progress);
    outcomes.push_back(outcome(run, result, nullptr, status_of(result, false), figure_pointers(values)));
    if (values.count("json")) all.push_back(json_of(run, result));
  }
  print(values.count("json")  ? json_text({{"schema", 1}, {"runs", all}})
        : values.count("csv") ? results_csv(outcomes)
                              : results_text(outcomes));
  return first_fault(outcomes);
}

int run(const po::variables_map& values) {
  if (values.count("json") && values.count("csv"))
    throw UsageError{"--json and --csv are two forms of one thing"};
  const std::vector<Run> runs = runs_of(values);
  (void)figure_pointers(values);
  const Registry registry = registry_for(values);
  if (runs.size() == 1 && !values.count("csv")) return check_one(runs.front(), values, registry);
  return check_series(runs, values, registry);
}

}  // namespace

Command check_command() {
  return {
      "check",
      "Checks a job: findings as a table, worst first. Several jobs, or values that make a series, are "
      "told in a line each. Writes no file.",
      {jobs_argument()},
      with({{"json", "", "", "findings as JSON"}, {"csv", "", "", "a line of figures for each run, as CSV"}},
           with(job_options(), {figure_option()})),
      run};
}

}  // namespace lamwright::cli
