#include "cli/command.hpp"
#include "cli/job_run.hpp"
#include "cli/options.hpp"
#include "cli/terminal.hpp"
#include "exporters/json/findings_json.hpp"

namespace lamwright::cli {
namespace {

std::string as_json(const Evaluation& result) {
  const Json json{{"schema", 1},
                  {"title", result.job->title},
                  {"method", result.plan->method},
                  {"findings", json_findings(result.findings)},
                  {"notes", result.plan->notes},
                  {"read", result.job->notes}};
  return json_text(json);
}

std::string as_table(const Evaluation& result) {
  std::string text = "Press: " + result.plan->method + ". " + result.plan->reason + "\n\n" +
                     findings_table(result.findings) + "\n" + verdict_counts(result.findings) + "\n";
  for (const std::string& note : result.plan->notes) text += "Note: " + note + "\n";
  text += work_text(result);
  for (const std::string& note : result.job->notes) text += "Read: " + note + "\n";
  return text;
}

int run(const std::vector<std::string>& arguments) {
  Accepts accepts{po::options_description(), {"job"}};
  accepts.options.add_options()("json", "findings as JSON");
  add_data_option(accepts.options);
  po::variables_map values;
  if (!parse(check_command(), accepts, arguments, values)) return kDone;
  Registry registry;
  add_press_methods(registry);
  StageProgress progress;
  const Evaluation result = evaluated(required(values, "job", "JOB"), data_files(values), registry, progress);
  if (!result.errors.empty()) return tell(result.errors);
  print(values.count("json") ? as_json(result) : as_table(result));
  return any_failed(result.findings) ? kFindingFailed : kDone;
}

}  // namespace

Command check_command() {
  return {"check", "check JOB [--json] [--data FILE]...",
          "Checks a job: findings as a table, worst first. Writes no file.", run};
}

}  // namespace lamwright::cli
