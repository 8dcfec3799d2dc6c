#include "cli/build_options.hpp"
#include "cli/build_run.hpp"
#include "cli/desktop.hpp"
#include "cli/options.hpp"
#include "cli/output_folder.hpp"
#include "cli/plugins.hpp"
#include "cli/results.hpp"
#include "cli/series.hpp"
#include "cli/terminal.hpp"
#include "kernel/job/wanted.hpp"
#include "shared/number.hpp"

namespace lamwright::cli {
namespace {

// "22.2 mm, at most 15 mm"
std::string against_limit(const Finding& f) { return with_unit(f.value, f.unit) + ", " + limit_text(f); }

std::string summary_text(const Evaluation& result, const std::vector<std::string>& told,
                         const std::string& folder, std::size_t files) {
  const PressPlan& plan = *result.plan;
  std::string text = (plan.title.empty() ? "Press" : plan.title) + ": " + plan.method + " press, " +
                     counted(long(plan.sections.size()), "former") + "\n";
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    const Vec3 size = plan.parts[i].box().size();
    rows.push_back({"  " + std::to_string(instances(plan, i)) + " x", plan.parts[i].name(),
                    number(size.x(), 1) + " x " + number(size.y(), 1) + " x " + number(size.z(), 1),
                    plan.parts[i].stock()});
  }
  text += aligned(rows);
  text += "Checks: " + verdict_counts(result.findings) + "\n";
  for (const Finding& f : worst_first(result.findings))
    if (f.verdict != Verdict::pass)
      text += "  " + to_text(f.verdict) + ": " + f.title + " (" + f.where + ") " + against_limit(f) + ". " +
              f.advice + "\n";
  for (const auto* notes : {&plan.notes, &told})
    for (const std::string& note : *notes) text += "Note: " + note + "\n";
  text += work_text(result);
  return text + counted(long(files), "file") + " in " + folder + "\n";
}

int refuse_failed(const Evaluation& result) {
  for (const Finding& f : worst_first(result.findings))
    if (f.verdict == Verdict::fail)
      message(f.title + " (" + f.where + "): " + against_limit(f) + "; " + f.advice);
  message("nothing was written; --despite-fails builds all the same");
  return kFindingFailed;
}

constexpr const char* kPage = "job-sheet.html";

void refuse_nothing_to_open(const OutputSpec& outputs) {
  if (!wanted(outputs, "html"))
    throw UsageError{"--open shows the job sheet, which is not written: add html to what is built"};
}

// Everything is built by now, so a missing desktop is no fault.
void show(const std::string& folder) {
  const std::string problem = show_file(std::filesystem::path(folder) / kPage);
  if (!problem.empty()) message(problem);
}

int build_one(const Run& run, const po::variables_map& values, Registry& registry) {
  const std::string folder = required(values, "output", "-o DIR");
  StageProgress progress;
  const Ready job = ready(run.input, values, registry, progress);
  if (!job.result.errors.empty()) return tell(job.result.errors);
  if (values.count("open")) refuse_nothing_to_open(job.result.job->outputs);
  if (!job.sound()) return refuse_failed(job.result);
  OutputFolder output(folder);
  write(job, registry, progress, output);
  progress.step("moving into place");
  output.commit();
  print(summary_text(job.result, progress.notes(), folder, output.written().size() + 1));
  if (values.count("open")) show(folder);
  return kDone;
}

// What a series cannot do, and what only a series can.
void refuse_unfit(const std::vector<Run>& runs, const po::variables_map& values) {
  if (runs.size() > 1 && values.count("open")) throw UsageError{"--open shows one job sheet, not a series"};
  if (runs.size() == 1 && values.count("figure"))
    throw UsageError{"--figure is for the table of a series: several jobs, or --set with several values"};
}

int run(const po::variables_map& values) {
  required(values, "output", "-o DIR");
  const std::vector<Run> runs = runs_of(values);
  refuse_unfit(runs, values);
  (void)figure_pointers(values);
  Registry registry = registry_for(values);
  overridden({}, values, exporter_names(registry));  // a wrong value is told before anything is read
  return runs.size() == 1 ? build_one(runs.front(), values, registry) : build_series(runs, values, registry);
}

std::vector<OptionRow> options() {
  return with(with({{.name = "output",
                     .letter = "o",
                     .value = "DIR",
                     .meaning = "folder for the results: new, empty, or from an earlier build",
                     .completes = Completes::folder,
                     .required = true},
                    {"despite-fails", "", "", "build although a check fails"},
                    {"open", "", "", "show the job sheet when it is done"}},
                   output_options()),
              with(job_options(), {figure_option()}));
}

}  // namespace

Command build_command() {
  return {"build",
          "Lays out the press and writes solids, cutting files, nested sheets, drawings, lists and the "
          "summary. Several jobs, or values that make a series, are built each into a folder of its own.",
          {jobs_argument()},
          options(),
          run};
}

}  // namespace lamwright::cli
