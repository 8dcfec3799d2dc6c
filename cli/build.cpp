#include <algorithm>

#include "cli/build_options.hpp"
#include "cli/command.hpp"
#include "cli/desktop.hpp"
#include "cli/job_run.hpp"
#include "cli/options.hpp"
#include "cli/output_folder.hpp"
#include "cli/plugins.hpp"
#include "cli/terminal.hpp"
#include "kernel/job/wanted.hpp"
#include "kernel/supply/gather.hpp"
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

// Everything that may write, in order; libraries only where they are wanted.
void add_writers(const OutputSpec& outputs, Registry& registry) {
  for (const Module& module : modules())
    if (wanted(outputs, module.name)) load(module, registry);
  add_summary(registry);
}

void write(const Evaluation& result, const Supply& supply, const Registry& registry, Progress& progress,
           OutputFolder& output) {
  for (const auto& exporter : registry.exporters()) {
    if (!wanted(result.job->outputs, exporter->name())) continue;
    progress.step("writing " + exporter->name());
    exporter->write({*result.job, *result.plan, result.findings, progress, result.figures, supply}, output);
  }
  progress.step("moving into place");
  output.commit();
}

// Solids and the model to look at need neither sheets nor lists.
Supply supply_of(const Evaluation& result, Progress& progress) {
  const auto& only = result.job->outputs.only;
  if (!only.empty() && std::all_of(only.begin(), only.end(),
                                   [](const std::string& name) { return name == "step" || name == "gltf"; }))
    return {};
  progress.step("sheets, lengths and lists");
  const Supply supply = gather(*result.job, *result.plan, result.figures, [&] { progress.step("sheets"); });
  for (const std::string& note : supply.notes) progress.note(note);
  return supply;
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

int build(const po::variables_map& values) {
  const std::string job_file = required(values, "job", "JOB");
  const std::string folder = required(values, "output", "-o DIR");
  Registry registry;
  add_press_methods(registry);
  add_exporters(registry);
  StageProgress progress;
  Evaluation result = evaluated(job_file, data_files(values), registry, progress);
  if (!result.errors.empty()) return tell(result.errors);
  result.job->outputs = overridden(result.job->outputs, values);
  refuse_unknown(result.job->outputs.only, job_file);
  if (values.count("open")) refuse_nothing_to_open(result.job->outputs);
  if (any_failed(result.findings) && !values.count("despite-fails")) return refuse_failed(result);
  OutputFolder output(folder);
  add_writers(result.job->outputs, registry);
  write(result, supply_of(result, progress), registry, progress, output);
  print(summary_text(result, progress.notes(), folder, output.written().size() + 1));
  if (values.count("open")) show(folder);
  return kDone;
}

int run(const std::vector<std::string>& arguments) {
  Accepts accepts{po::options_description(), {"job"}};
  accepts.options.add_options()("output,o", po::value<std::string>()->value_name("DIR"),
                                "folder for the results: new, empty, or from an earlier build")(
      "despite-fails", "build although a check fails")("open", "show the job sheet when it is done");
  add_output_options(accepts.options);
  add_data_option(accepts.options);
  po::variables_map values;
  if (!parse(build_command(), accepts, arguments, values)) return kDone;
  overridden({}, values);  // a wrong value is told before anything is read
  return build(values);
}

}  // namespace

Command build_command() {
  return {
      "build",
      "build JOB -o DIR [--only LIST] [--paper a3|a4] [--sheet LxW] [--cutter MM] [--dxf r2000|r12] [--step "
      "ap214|ap242] "
      "[--data FILE]... [--despite-fails] [--open]",
      "Lays out the press and writes solids, cutting files, nested sheets, drawings, lists and the summary.",
      run};
}

}  // namespace lamwright::cli
