#include <chrono>

#include "cli/command.hpp"
#include "cli/files.hpp"
#include "cli/folder_lock.hpp"
#include "cli/job_run.hpp"
#include "cli/options.hpp"
#include "cli/replace_file.hpp"
#include "cli/terminal.hpp"
#include "exporters/json/numbers.hpp"
#include "kernel/job/computed_share.hpp"
#include "kernel/job/make_panel.hpp"
#include "kernel/panel/layup_key.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

constexpr const char* kDefaultFile = "springback.csv";

// A day of the calendar, "2026-03-14".
bool is_day(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (const std::size_t i : {0, 1, 2, 3, 5, 6, 8, 9})
    if (text[i] < '0' || text[i] > '9') return false;
  const auto part = [&](std::size_t from, std::size_t size) { return std::stoi(text.substr(from, size)); };
  return std::chrono::year_month_day(std::chrono::year(part(0, 4)), std::chrono::month(unsigned(part(5, 2))),
                                     std::chrono::day(unsigned(part(8, 2))))
      .ok();
}

std::string text_option(const po::variables_map& values, const std::string& name) {
  if (!values.count(name)) return {};
  const std::string text = values[name].as<std::string>();
  if (utf8_fault(text)) throw UsageError{"--" + name + " is not UTF-8"};
  return text;
}

std::string day_option(const po::variables_map& values) {
  const std::string day = text_option(values, "date");
  if (values.count("date") && !is_day(day))
    throw UsageError{"--date \"" + day + "\" is no day of the calendar, write it like 2026-03-14"};
  return day;
}

double length_option(const std::string& name, const std::string& text, LengthUnit bare) {
  try {
    return parse_length(text, bare).value;
  } catch (const Error& fault) {
    throw UsageError{"--" + name + ": " + fault.what()};
  }
}

Job piece_of(const std::string& job_file, const Sources& sources, std::vector<Error>& errors) {
  JobResult read = read_test_piece(read_file(job_file), job_file, sources);
  errors = std::move(read.errors);
  return read.job.value_or(Job{});
}

struct Measured {
  std::string pressed, released, day, note;
};

NotebookEntry entry_of(const Job& job, const Panel& panel, const Measured& measured) {
  NotebookEntry entry{measured.day,
                      layup_key(panel.plies, panel.glue_line),
                      panel.glue,
                      panel.thickness,
                      panel.face,
                      panel.neutral_height - panel.face_height(),
                      length_option("pressed", measured.pressed, job.units),
                      std::nullopt,
                      measured.note};
  if (measured.released != "flat") entry.released = length_option("released", measured.released, job.units);
  if (const auto fault = fault_of(entry))
    throw UsageError{"--" + fault->column + ": " + fault->problem + "; " + fault->remedy};
  return entry;
}

// The file of --file, else the one that the job names, else the default beside the job. Links are followed,
// so that the file itself is replaced.
fs::path notebook_path(const po::variables_map& values, const fs::path& job_file, const Job& job) {
  const std::string named = job.press.springback.notebook;
  const fs::path path = values.count("file")
                            ? fs::path(required(values, "file", "--file FILE"))
                            : job_file.parent_path() / (named.empty() ? kDefaultFile : named);
  std::error_code fault;
  const fs::path found = fs::weakly_canonical(fs::absolute(path), fault);
  if (fault) throw file_error(path.string(), "is no usable path: " + fault.message(), "");
  if (fs::exists(found, fault) && !fs::is_regular_file(found, fault))
    throw file_error(path.string(), "is no ordinary file", "name another with --file");
  return found;
}

// With one line more, in the line ends that the text has. A last line without an end gets one first.
std::string appended(std::string text, const NotebookEntry& entry) {
  if (text.empty()) text = notebook_header() + "\n";
  const auto first = text.find('\n');
  const std::string end = first != std::string::npos && first > 0 && text[first - 1] == '\r' ? "\r\n" : "\n";
  if (text.back() != '\n') text += end;
  return text + notebook_line(entry) + end;
}

std::string share_text(const std::optional<double>& share) { return share ? number(*share, 4) : "-"; }

std::string told(const NotebookEntry& entry, const NotebookFit& fit, double computed,
                 const std::string& file) {
  return file + ": " + entry.layup + ", " + entry.glue + "\n" + to_text(entry.face) +
         (entry.face == Face::centre ? "" : " face") + " pressed at " + number(entry.pressed) +
         " mm, released " + (entry.released ? "at " + number(*entry.released) + " mm" : "flat") +
         ": share lost " + number(share_lost(entry), 4) + " (of the neutral line's curvature)\nnow " +
         fit_text(fit) + "; computed " + number(computed, 4) + "\n";
}

int add(const po::variables_map& values) {
  const std::string job_file = required(values, "job", "JOB");
  const Measured measured{required(values, "pressed", "--pressed R"),
                          required(values, "released", "--released R|flat"), day_option(values),
                          text_option(values, "note")};
  std::vector<Error> errors;
  const Job job = piece_of(job_file, FileSources(job_file, data_files(values)), errors);
  if (!errors.empty()) return tell(errors);
  const Panel panel = make_panel(job);
  const NotebookEntry entry = entry_of(job, panel, measured);
  const fs::path path = notebook_path(values, job_file, job);
  const FolderLock lock = FolderLock::waited_for(path.parent_path());
  std::error_code fault;
  const bool there = fs::exists(path, fault);
  if (fault) throw file_error(path.string(), "cannot be read: " + fault.message(), "");
  std::string text = there ? read_file(path) : "";
  std::vector<NotebookEntry> pieces;
  if (there) pieces = read_notebook(text, path.string());
  pieces.push_back(entry);
  replace_file(path, appended(std::move(text), entry));
  print(told(entry, *fit(pieces, entry.layup, entry.glue), springback_share(section_of(panel.plies)),
             path.string()));
  return kDone;
}

struct Row {
  NotebookFit fit;
  std::optional<double> computed;
};

// A name that is not UTF-8 is shown as well as it can be.
std::string quoted(const std::string& name) {
  return Json(name).dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string job_line(const std::string& file) {
  return "springback = {notebook = " + quoted(fs::path(file).filename().string()) + "}";
}

std::string as_json(const std::vector<Row>& rows, const std::string& file) {
  const auto if_known = [](const std::optional<double>& value) {
    return value ? json_number(*value) : Json(nullptr);
  };
  Json layups = Json::array();
  for (const Row& row : rows)
    layups.push_back({{"layup", row.fit.layup},
                      {"glue", row.fit.glue},
                      {"pieces", row.fit.pieces},
                      {"share", json_number(row.fit.share)},
                      {"spread", if_known(row.fit.spread)},
                      {"computed", if_known(row.computed)}});
  return json_text({{"schema", 1}, {"layups", layups}, {"job", job_line(file)}});
}

std::string as_table(const std::vector<Row>& rows, const std::string& file) {
  std::vector<std::vector<std::string>> cells{{"lay-up", "glue", "pieces", "share", "spread", "computed"}};
  for (const Row& row : rows)
    cells.push_back({row.fit.layup, row.fit.glue, std::to_string(row.fit.pieces), number(row.fit.share, 4),
                     share_text(row.fit.spread), share_text(row.computed)});
  return (rows.empty() ? "no piece yet\n" : aligned(cells)) +
         "\nIn a job beside it, under [press]: " + job_line(file) + "\n";
}

int show(const po::variables_map& values) {
  const std::string file = required(values, "notebook", "FILE");
  const FileSources sources("", data_files(values));
  std::vector<Row> rows;
  for (const NotebookFit& fit : fits(read_notebook(read_file(file), file)))
    rows.push_back({fit, computed_share(fit.layup, sources)});
  print(values.count("json") ? as_json(rows, file) : as_table(rows, file));
  return kDone;
}

}  // namespace

Command notebook_add_command() {
  return {
      "notebook add",
      "Appends a test piece of a job's lay-up and glue to a notebook, which is made if need be.",
      {{"job", "JOB", Completes::file}},
      {{.name = "pressed",
        .letter = "",
        .value = "R",
        .meaning = "radius in the press, of the face that the job describes; as \"600 mm\" or \"20 in\", "
                   "bare numbers in the job's units",
        .required = true},
       {.name = "released",
        .letter = "",
        .value = "R|flat",
        .meaning = "radius of that face after release, or flat",
        .required = true},
       {"file", "", "FILE",
        "the notebook; else the one that the job names, else springback.csv beside the job", Completes::file},
       {"date", "", "DAY", "as 2026-03-14"},
       {"note", "", "TEXT", "whatever is worth knowing"},
       data_option()},
      add};
}

Command notebook_show_command() {
  return {"notebook show",
          "Shows the share of curvature lost that fits the pieces of each lay-up.",
          {{"notebook", "FILE", Completes::file}},
          {{"json", "", "", "as JSON"}, data_option()},
          show};
}

}  // namespace lamwright::cli
