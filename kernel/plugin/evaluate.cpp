#include "kernel/plugin/evaluate.hpp"

#include "kernel/check/check.hpp"
#include "kernel/job/make_panel.hpp"
#include "kernel/press/aids.hpp"
#include "kernel/press/common_notes.hpp"
#include "kernel/press/slatted.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

// The best of the registered methods, or why none will do.
const PressMethod& best_method(const Registry& registry, const Panel& panel) {
  const PressMethod* best = nullptr;
  int rank = 0;
  std::string reasons;
  for (const auto& method : registry.methods()) {
    const Suits suits = method->suits(panel);
    if (suits.rank > rank) {
      rank = suits.rank;
      best = method.get();
    }
    if (suits.rank == 0) reasons += (reasons.empty() ? "" : "; ") + method->name() + ": " + suits.reason;
  }
  if (!best)
    throw geometry_error("press.method", "no press method suits this panel (" + reasons + ")",
                         "make the panel in pieces that turn less, or change the profile");
  return *best;
}

const PressMethod& chosen_method(const Registry& registry, const Job& job, const Panel& panel) {
  if (job.press.method == "auto") return best_method(registry, panel);
  if (const PressMethod* method = registry.method(job.press.method)) return *method;
  std::vector<std::string> names{"auto"};
  for (const auto& method : registry.methods()) names.push_back(method->name());
  const auto near = nearest_name(job.press.method, names);
  throw job_error({{}, 0, 0, "press.method"}, "read \"" + job.press.method + "\"",
                  (near ? "did you mean \"" + *near + "\"? " : "") + std::string("known: ") + listed(names));
}

// Errors of the kernel know no file; people want to see which job they are about.
Error in_file(const Error& error, const std::string& file) {
  Place where = error.where();
  if (where.file.empty()) where.file = file;
  return {error.kind(), where, error.problem(), error.remedy()};
}

}  // namespace

Evaluation evaluate(std::string_view text, const std::string& file, const Sources& sources,
                    const Registry& registry, Progress& progress) {
  Evaluation out;
  progress.step("reading the job");
  JobResult read = read_job(text, file, registry.keys(), sources);
  out.errors = std::move(read.errors);
  if (!read.job) return out;
  out.job = std::move(read.job);
  try {
    progress.step("panel");
    out.panel = make_panel(*out.job);
    progress.step("press plan");
    out.plan = chosen_method(registry, *out.job, *out.panel).plan(*out.job, *out.panel);
    for (std::string& note : common_notes(*out.job, *out.panel)) out.plan->notes.push_back(std::move(note));
    add_slats(*out.job, *out.plan);
    if (out.job->outputs.aids) {
      ShopAids aids = shop_aids(*out.job, *out.panel);
      out.plan->aids = std::move(aids.aids);
      for (std::string& note : aids.notes) out.plan->notes.push_back(std::move(note));
    }
    progress.step("checks");
    Assessment assessed = assess(*out.job, *out.plan);
    out.findings = std::move(assessed.findings);
    out.figures = std::move(assessed.figures);
  } catch (const Error& error) {
    out.errors.push_back(in_file(error, file));
  } catch (const std::exception& fault) {
    out.errors.push_back(
        Error(ErrorKind::internal, {file, 0, 0, {}}, fault.what(), "please report it with the job file"));
  }
  return out;
}

}  // namespace lamwright
