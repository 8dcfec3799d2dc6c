#include "kernel/job/read_job.hpp"

#include <cmath>

#include "kernel/job/read_hardware.hpp"
#include "kernel/job/read_layup.hpp"
#include "kernel/job/read_outputs.hpp"
#include "kernel/job/read_profile.hpp"
#include "kernel/job/reader.hpp"
#include "kernel/job/settings.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/toml_text.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr const char* kShort = "a job file is a few lines";

// What the job's files hold becomes part of its number: with other trade rows it is another job.
class NotedSources : public Sources {
 public:
  explicit NotedSources(const Sources& sources) : sources_(sources) {}
  std::string read(const std::string& name) const override {
    std::string text = sources_.read(name);
    noted_ += text;
    return text;
  }
  std::vector<DataText> data() const override {
    std::vector<DataText> texts = sources_.data();
    for (const DataText& text : texts) noted_ += text.text;
    return texts;
  }
  std::string date() const override { return sources_.date(); }
  const std::string& noted() const { return noted_; }

 private:
  const Sources& sources_;
  mutable std::string noted_;
};

Face read_face(Reader& reader) {
  const std::string face = reader.text(reader.at("panel.face"));
  return face == "outer" ? Face::outer : face == "centre" ? Face::centre : Face::inner;
}

PanelSpec read_panel(Reader& reader, const Sources& sources) {
  PanelSpec panel;
  panel.width = reader.length(reader.at("panel.width"));
  panel.trim = reader.length(reader.at("panel.trim"));
  panel.count = reader.integer(reader.at("panel.count"));
  panel.face = read_face(reader);
  const auto reading = read_profile_node(reader, reader.at("panel.profile"), sources);
  if (!reading) return panel;
  panel.profile = reading->profile.posed({});
  for (const std::string& note : reading->notes) reader.note("panel.profile: " + note);
  return panel;
}

SpringbackSpec read_test_pieces(Reader& reader, const Node& node, const Sources& sources) {
  const Node notebook = reader.in(node, "notebook");
  SpringbackSpec spec;
  if (!notebook) {
    spec.kind = SpringbackSpec::Kind::test_piece;
    spec.form_radius = reader.length(reader.in(node, "form_radius"));
    spec.part_radius = reader.length(reader.in(node, "part_radius"));
    return spec;
  }
  spec.kind = SpringbackSpec::Kind::notebook;
  spec.notebook = reader.text(notebook);
  if (reader.in(node, "form_radius") || reader.in(node, "part_radius"))
    reader.refuse(notebook, "is given beside a test piece", "give notebook, or form_radius and part_radius");
  if (spec.notebook.empty()) {
    reader.refuse(notebook, "names no file", "give a file name in quotes, as \"springback.csv\"");
    return spec;
  }
  try {
    spec.pieces = read_notebook(sources.read(spec.notebook), spec.notebook);
  } catch (const Error& fault) {
    reader.keep(fault);
  }
  return spec;
}

SpringbackSpec read_springback(Reader& reader, const Sources& sources) {
  const Node node = reader.at("press.springback");
  SpringbackSpec spec;
  if (!node) return spec;
  if (node.node->is_number()) return {SpringbackSpec::Kind::share, reader.number(node), 0, 0};
  if (node.node->is_table()) return read_test_pieces(reader, node, sources);
  const std::string text = reader.text(node);
  if (text == "none")
    spec.kind = SpringbackSpec::Kind::none;
  else if (text != "computed")
    reader.refuse(node, "read \"" + text + "\"",
                  "allowed computed, none, a share like 0.03, {form_radius, part_radius} or {notebook}");
  return spec;
}

PullSpec read_pull(Reader& reader) {
  const Node node = reader.at("press.pull");
  PullSpec pull;
  pull.at = reader.length(reader.at("press.pull_at"));
  if (node && node.node->is_number()) {
    pull.kind = PullSpec::Kind::angle;
    pull.angle = radians(reader.number(node));
    return pull;
  }
  const std::string allowed =
      "allowed square-to-chord, bisector, or degrees from the chord's normal, -90 to 90";
  if (node && !node.node->is_string()) {
    reader.refuse(node, "read " + value_read(*node.node), allowed);
    return pull;
  }
  const std::string text = reader.text(node);
  if (text == "bisector") {
    pull.kind = PullSpec::Kind::bisector;
  } else if (text != "square-to-chord") {
    const auto near = nearest_name(text, {"square-to-chord", "bisector"});
    reader.refuse(node, "read \"" + text + "\"", (near ? "did you mean \"" + *near + "\"? " : "") + allowed);
  }
  return pull;
}

PressSpec read_press(Reader& reader, const Sources& sources) {
  PressSpec press;
  press.method = reader.text(reader.at("press.method"));
  press.pull = read_pull(reader);
  press.springback = read_springback(reader, sources);
  press.pressure_required = reader.text(reader.at("press.pressure")) == "required";
  press.beam_tilt = radians(reader.number(reader.at("press.beam_tilt")));
  press.draft = radians(reader.number(reader.at("press.draft")));
  press.guide_rollers = reader.flag(reader.at("press.guide_rollers"));
  return press;
}

// "2026-03-14" and a day of the calendar.
bool is_date(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (const std::size_t i : {0, 1, 2, 3, 5, 6, 8, 9})
    if (text[i] < '0' || text[i] > '9') return false;
  const int year = std::stoi(text.substr(0, 4)), month = std::stoi(text.substr(5, 2)),
            day = std::stoi(text.substr(8));
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  const int days[] = {31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return year > 0 && month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1];
}

std::string read_date(Reader& reader, const Sources& sources) {
  const Node node = reader.at("date");
  if (!node) return sources.date();
  std::string date;
  if (const auto day = node.node->value<toml::date>()) {
    const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
    const std::string year = std::to_string(day->year);
    date = std::string(4 - std::min<std::size_t>(4, year.size()), '0') + year + "-" + two(day->month) + "-" +
           two(day->day);
  } else {
    date = reader.text(node);
  }
  if (!date.empty() && !is_date(date))
    reader.refuse(node, "read \"" + date + "\"", "write a day like 2026-03-14");
  return date;
}

void check_schema(Reader& reader) {
  const Node node = reader.at("schema");
  const int schema = reader.integer(node);
  if (schema > 1)
    reader.refuse(node, "read " + std::to_string(schema) + ", a newer form of job file",
                  "this program knows schema 1; use a newer program");
  if (schema < 1) reader.refuse(node, "read " + std::to_string(schema), "the first schema is 1");
}

std::string checked_title(Reader& reader) {
  std::string title = reader.text(reader.at("title"));
  if (code_points(title).size() > 200)
    reader.refuse(reader.at("title"), "is longer than 200 characters", "shorten it");
  return title;
}

// The files that `data` names: one, or a list.
std::vector<std::string> data_names(Reader& reader) {
  const Node data = reader.at("data");
  if (!data) return {};
  constexpr std::size_t kMostFiles = 20;
  if (!reader.fits(data, kMostFiles, "files", "put their rows into one")) return {};
  std::vector<Node> nodes{data};
  if (data.node->is_array()) nodes.clear();
  for (std::size_t i = 0; i < reader.size(data); ++i) nodes.push_back(reader.item(data, i));
  std::vector<std::string> names;
  for (const Node& node : nodes) {
    if (!node.node->is_string() || node.node->value<std::string>()->empty())
      reader.refuse(node, "read " + value_read(*node.node), "give a file name in quotes, or a list of them");
    else
      names.push_back(reader.text(node));
  }
  return names;
}

// The program's rows, on top those of the job's files, on top those of the sources. Nothing when a file is
// wrong: further errors would only come of the rows that are left out.
std::optional<TradeTables> trade_of(Reader& reader, const Sources& sources) {
  const std::size_t before = reader.errors().size();
  std::vector<DataText> texts;
  for (const std::string& name : data_names(reader)) texts.push_back({name, sources.read(name)});
  for (DataText& text : sources.data()) texts.push_back(std::move(text));
  TradeTables trade;
  std::vector<Error> faults;
  for (const DataText& text : texts) trade = trade.with(text.text, text.name, faults);
  for (const Error& fault : faults) reader.keep(fault);
  return reader.errors().size() == before ? std::optional(std::move(trade)) : std::nullopt;
}

bool one_panel(Reader& reader) {
  const Node panel = reader.at("panel");
  if (!panel || panel.node->is_table()) return true;
  reader.refuse(panel, "several panels in one file are reserved for later", "write one [panel] table");
  return false;
}

// Keys that methods and exporters declare: read by their rows, never by name.
OwnValues read_own(Reader& reader, const std::vector<KeyRow>& schemas) {
  OwnValues own;
  for (const KeyRow& row : schemas) {
    const Node node = reader.at(row.path);
    if (!node && row.fallback.empty()) continue;
    switch (row.type) {
      case KeyType::length:
        own.numbers[row.path] = reader.length(node);
        break;
      case KeyType::number:
        own.numbers[row.path] = reader.number(node);
        break;
      case KeyType::integer:
        own.numbers[row.path] = reader.integer(node);
        break;
      case KeyType::force:
        own.numbers[row.path] = reader.force(node);
        break;
      case KeyType::pressure:
        own.numbers[row.path] = reader.pressure(node);
        break;
      case KeyType::flag:
        own.numbers[row.path] = reader.flag(node) ? 1 : 0;
        break;
      case KeyType::text:
      case KeyType::choice:
        own.texts[row.path] = reader.text(node);
        break;
      case KeyType::list:
      case KeyType::table:
      case KeyType::mixed:
        break;  // a table only names its members' place
    }
  }
  return own;
}

// The board's size is known only when its row is read.
void refuse_margin(Reader& reader, const Job& job) {
  const Vec2 sheet = job.outputs.sheet.value_or(job.formers.board_row.sheet);
  const double most = sheet.minCoeff() / 2;
  if (most > 0 && job.outputs.margin >= most)
    reader.refuse(reader.at("outputs.margin"),
                  "a margin of " + number(job.outputs.margin) + " leaves nothing of a sheet " +
                      number(sheet.x()) + " x " + number(sheet.y()),
                  "give less than " + number(most) + ", or a larger outputs.sheet");
}

Job read_all(Reader& reader, const TradeTables& trade, const Sources& sources,
             const std::vector<KeyRow>& schemas) {
  Job job;
  job.title = checked_title(reader);
  job.units = reader.units();
  const Node report = reader.at("report_units");
  job.report_units = job.units;
  if (report) unit_from(reader.text(report), job.report_units);
  job.date = read_date(reader, sources);
  job.panel = read_panel(reader, sources);
  job.layup = read_layup(reader, trade);
  job.press = read_press(reader, sources);
  job.caul = read_caul(reader, trade);
  job.formers = read_formers(reader, trade);
  job.beams = read_beams(reader, trade);
  job.straps = read_straps(reader, trade);
  job.outputs = read_outputs(reader);
  refuse_margin(reader, job);
  for (const TradeRow& row : trade.table("prices")) job.prices.push_back(price_of(row));
  job.notes = reader.notes();
  job.notes.insert(job.notes.end(), job.layup.notes.begin(), job.layup.notes.end());
  job.own = read_own(reader, schemas);
  return job;
}

toml::table parsed_job(const std::string& source, const std::string& file,
                       const std::vector<Setting>& settings) {
  toml::table root = parsed_toml(source, file);
  apply_settings(settings, root);
  return root;
}

// The file, what it names, and what stands in its place: with any other it is another job.
std::string number_of(const std::string& source, const std::string& noted,
                      const std::vector<Setting>& settings) {
  std::string all = source + noted;
  for (const Setting& setting : settings) all += "\n" + to_text(setting);
  return short_hash(all);
}

}  // namespace

JobResult read_job(std::string_view text, const std::string& file, const std::vector<KeyRow>& schemas,
                   const Sources& given) {
  try {
    const NotedSources sources(given);
    const std::string source = plain_toml(text, file, kShort);
    const std::vector<Setting> settings = given.settings();
    const toml::table root = parsed_job(source, file, settings);
    Reader reader(root, file, schemas);
    if (!one_panel(reader)) return {std::nullopt, reader.errors()};
    check_schema(reader);
    reader.refuse_unknown_keys();
    reader.read_units();
    const auto trade = trade_of(reader, sources);
    if (!trade) return {std::nullopt, reader.errors()};
    Job job = read_all(reader, *trade, sources, schemas);
    job.number = number_of(source, sources.noted(), settings);
    for (const Setting& setting : settings)
      job.notes.push_back(to_text(setting) + " stands in place of the job's own");
    if (reader.errors().empty()) return {std::move(job), {}};
    return {std::nullopt, reader.errors()};
  } catch (const Error& error) {
    return {std::nullopt, {error}};
  }
}

JobResult read_test_piece(std::string_view text, const std::string& file, const Sources& sources) {
  try {
    const toml::table root = parsed_job(plain_toml(text, file, kShort), file, sources.settings());
    Reader reader(root, file, {});
    reader.read_units();
    const auto trade = trade_of(reader, sources);
    if (!trade) return {std::nullopt, reader.errors()};
    Job job;
    job.units = reader.units();
    job.panel.face = read_face(reader);
    job.layup = read_layup(reader, *trade);
    job.press.springback.kind = SpringbackSpec::Kind::none;
    job.press.springback.notebook = reader.text(reader.at("press.springback.notebook"));
    if (reader.errors().empty()) return {std::move(job), {}};
    return {std::nullopt, reader.errors()};
  } catch (const Error& error) {
    return {std::nullopt, {error}};
  }
}

ProfileResult read_profile(std::string_view text, const std::string& file, const Sources& sources) {
  try {
    const toml::table root = parsed_job(plain_toml(text, file, kShort), file, sources.settings());
    Reader reader(root, file, {});
    reader.read_units();
    const Node profile = reader.at("panel.profile");
    reader.refuse_unknown_keys_in(profile);
    auto reading = read_profile_node(reader, profile, sources);
    if (reader.errors().empty()) return {std::move(reading), {}};
    return {std::nullopt, reader.errors()};
  } catch (const Error& error) {
    return {std::nullopt, {error}};
  }
}

}  // namespace lamwright
