#include "cli/results.hpp"

#include <algorithm>
#include <array>

#include "cli/command.hpp"
#include "cli/options.hpp"
#include "cli/terminal.hpp"
#include "exporters/json/summary.hpp"
#include "shared/csv.hpp"
#include "shared/number.hpp"

namespace lamwright::cli {
namespace {

using Pairs = std::vector<std::vector<std::string>>;

struct Column {
  const char* heading;
  const char* pointer;  // into the summary
  bool supply = false;  // known only where sheets and lists are
};

constexpr std::array kColumns{Column{"number", "/number"},
                              Column{"title", "/title"},
                              Column{"method", "/press/method"},
                              Column{"formers", "/press/stations"},
                              Column{"thickness mm", "/panel/thickness"},
                              Column{"girth neutral mm", "/panel/girth/neutral"},
                              Column{"chord mm", "/panel/chord"},
                              Column{"springback share", "/springback/ratio"},
                              Column{"pressure least MPa", "/pressure/finished/least"},
                              Column{"pressure greatest MPa", "/pressure/finished/greatest"},
                              Column{"pressure asked MPa", "/pressure/required"},
                              Column{"panel kg", "/masses/panel"},
                              Column{"press kg", "/masses/press"},
                              Column{"sheets", "/sheets", true}};

std::string cell(const Json& summary, const std::string& pointer) {
  const Json::json_pointer at(pointer);
  if (!summary.contains(at)) return {};
  const Json& found = summary[at];
  if (found.is_structured()) return found.empty() ? "" : std::to_string(found.size());
  if (found.is_string()) return found.get<std::string>();
  if (found.is_number()) return number(found.get<double>(), 9);
  return found.is_boolean() ? (found.get<bool>() ? "yes" : "no") : "";
}

// Figures by heading; empty ones for a run without a plan.
Pairs figures_of(const Json& summary, bool supply, const std::vector<std::string>& pointers) {
  Pairs figures;
  for (const Column& column : kColumns)
    if (supply || !column.supply) figures.push_back({column.heading, cell(summary, column.pointer)});
  for (const std::string& pointer : pointers) figures.push_back({pointer, cell(summary, pointer)});
  return figures;
}

std::string count(const Evaluation& result, Verdict verdict) {
  return std::to_string(std::count_if(result.findings.begin(), result.findings.end(),
                                      [&](const Finding& f) { return f.verdict == verdict; }));
}

// The verdict of the worst check and what it is about.
Pairs verdict_of(const Evaluation& result) {
  if (!result.plan)
    return {{"verdict", "refused"},
            {"fails", ""},
            {"cautions", ""},
            {"worst check", result.errors.front().what()}};
  const std::vector<Finding> sorted = worst_first(result.findings);
  if (sorted.empty()) return {{"verdict", "pass"}, {"fails", "0"}, {"cautions", "0"}, {"worst check", ""}};
  const Finding& worst = sorted.front();
  const bool well = worst.verdict == Verdict::pass;
  return {{"verdict", to_text(worst.verdict)},
          {"fails", count(result, Verdict::fail)},
          {"cautions", count(result, Verdict::caution)},
          {"worst check", well ? "" : worst.title + " (" + worst.where + ")"}};
}

Pairs head_of(const Run& run, int status) {
  Pairs head{{"run", run.name}, {"job", run.input.file}};
  for (const Setting& setting : run.input.settings) head.push_back({setting.path, setting.value});
  head.push_back({"exit status", std::to_string(status)});
  return head;
}

std::vector<std::string> column_of(const Pairs& pairs, std::size_t column) {
  std::vector<std::string> texts;
  for (const auto& pair : pairs) texts.push_back(pair[column]);
  return texts;
}

}  // namespace

OptionRow figure_option() {
  return {.name = "figure",
          .letter = "",
          .value = "POINTER",
          .meaning =
              "one more figure of summary.json in the table of a series, as /press/former_height; may "
              "be given again",
          .repeats = true};
}

std::vector<std::string> figure_pointers(const po::variables_map& values) {
  const std::vector<std::string> pointers = all_of(values, "figure", "--figure POINTER");
  for (const std::string& pointer : pointers) {
    try {
      (void)Json::json_pointer(pointer);
    } catch (const Json::exception&) {
      throw UsageError{"--figure " + pointer + " is no JSON pointer, as /panel/chord"};
    }
  }
  return pointers;
}

int status_of(const Evaluation& result, bool despite_fails) {
  if (!result.errors.empty()) return status_of(result.errors.front());
  return any_failed(result.findings) && !despite_fails ? kFindingFailed : kDone;
}

Outcome outcome(const Run& run, const Evaluation& result, const Supply* supply, int status,
                const std::vector<std::string>& pointers) {
  Json summary;
  if (result.errors.empty()) {
    Progress quiet;
    summary = summary_json(
        {*result.job, *result.plan, result.findings, quiet, result.figures, supply ? *supply : kNoSupply},
        {});
  }
  Outcome out{run, status, head_of(run, status)};
  for (Pairs more : {verdict_of(result), figures_of(summary, supply != nullptr, pointers)})
    out.figures.insert(out.figures.end(), more.begin(), more.end());
  return out;
}

std::string results_csv(const std::vector<Outcome>& outcomes) {
  std::string text;
  for (const Outcome& one : outcomes) {
    if (text.empty()) text = csv_line(column_of(one.figures, 0)) + "\n";
    text += csv_line(column_of(one.figures, 1)) + "\n";
  }
  return text;
}

std::string results_text(const std::vector<Outcome>& outcomes) {
  Pairs rows;
  for (const Outcome& one : outcomes) {
    std::vector<std::string> heads, cells;
    for (const auto& pair : one.figures) {
      if (pair[0] == "job" || pair[0] == "exit status") continue;
      heads.push_back(pair[0]);
      cells.push_back(pair[1]);
      if (pair[0] == "worst check") break;
    }
    if (rows.empty()) rows.push_back(heads);
    rows.push_back(cells);
  }
  return aligned(rows);
}

int first_fault(const std::vector<Outcome>& outcomes) {
  for (const Outcome& one : outcomes)
    if (one.status != kDone) return one.status;
  return kDone;
}

}  // namespace lamwright::cli
