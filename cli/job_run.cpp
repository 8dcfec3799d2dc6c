#include "cli/job_run.hpp"

#include <algorithm>
#include <cmath>

#include "cli/command.hpp"
#include "cli/files.hpp"
#include "cli/terminal.hpp"
#include "shared/number.hpp"

namespace lamwright::cli {

int status_of(const Error& error) {
  switch (error.kind()) {
    case ErrorKind::job:
    case ErrorKind::geometry:
      return kWrongJob;
    case ErrorKind::file:
      return kFileFailed;
    case ErrorKind::internal:
      return kToolFailed;
  }
  return kToolFailed;
}

OptionRow data_option() {
  return {.name = "data",
          .letter = "",
          .value = "FILE",
          .meaning = "trade rows on top of the program's and the job's; may be given again",
          .completes = Completes::file,
          .repeats = true};
}

std::vector<std::string> data_files(const po::variables_map& values) {
  return all_of(values, "data", "--data FILE");
}

Evaluation evaluated(const JobInput& input, const Registry& registry, Progress& progress) {
  try {
    const std::string text = read_file(input.file);
    return evaluate(text, input.file, FileSources(input.file, input.data, input.settings), registry, progress);
  } catch (const Error& fault) {
    Evaluation unread;
    unread.errors.push_back(fault);
    return unread;
  }
}

int tell(const std::vector<Error>& errors) {
  for (const Error& error : errors) message(error.what());
  return errors.empty() ? int(kDone) : status_of(errors.front());
}

std::string verdict_counts(const std::vector<Finding>& findings) {
  const auto count = [&](Verdict verdict) {
    return std::to_string(std::count_if(findings.begin(), findings.end(),
                                        [&](const Finding& f) { return f.verdict == verdict; }));
  };
  return count(Verdict::pass) + " pass, " + count(Verdict::caution) + " caution, " + count(Verdict::fail) +
         " fail";
}

std::string with_unit(double value, const std::string& unit) {
  if (!std::isfinite(value)) return "unknown";
  const double size = std::abs(value);
  const int decimals = size >= 100 ? 1 : size >= 1 ? 2 : 3;
  return number(value, decimals) + (unit.empty() ? "" : " " + unit);
}

std::string limit_text(const Finding& f) {
  if (!std::isfinite(f.limit)) return "unknown";
  return (f.bound == Bound::at_least ? "at least " : "at most ") + with_unit(f.limit, f.unit);
}

std::string work_text(const Evaluation& result) {
  const Figures& figures = result.figures;
  std::string text;
  if (figures.glue && figures.glue->lines > 0) {
    const GlueWork& work = *figures.glue;
    const auto hours = [](double minutes) {
      return minutes >= 120 ? number(minutes / 60, 1) + " h" : number(minutes, 0) + " min";
    };
    text += "Glue: " + number(work.mass, 2) + " kg on " + counted(work.lines, "line") + " of one panel" +
            (result.panel->count > 1
                 ? ", " + number(work.total_mass, 2) + " kg for all " + std::to_string(result.panel->count)
                 : "") +
            "; outer faces dry. Under pressure " + hours(work.press) + " at 20 degrees C (not below " +
            number(result.job->layup.glue_row.least_temperature, 0) + "), " +
            counted(work.pressings, "pressing") + ", " + counted(work.days, "day") + " in the press; " +
            number(work.cure, 0) + " h more before machining.\n";
  }
  if (figures.masses)
    text += "Mass: panel " + number(figures.masses->panel, 1) + " kg, whole press " +
            number(figures.masses->press, 0) + " kg.\n";
  return text;
}

std::string findings_table(const std::vector<Finding>& findings) {
  std::vector<std::vector<std::string>> rows{{"verdict", "check", "value", "limit", "where"}};
  const std::vector<Finding> sorted = worst_first(findings);
  for (const Finding& f : sorted)
    rows.push_back({to_text(f.verdict), f.title, with_unit(f.value, f.unit), limit_text(f), f.where});
  std::string text = aligned(rows);
  for (const Finding& f : sorted)
    if (!f.advice.empty())
      text += "\n" + to_text(f.verdict) + ": " + f.title + " (" + f.where + "). " + f.advice + "\n";
  return text;
}

}  // namespace lamwright::cli
