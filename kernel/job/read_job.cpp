#include "kernel/job/read_job.hpp"

#include <cmath>

#include "kernel/job/read_hardware.hpp"
#include "kernel/job/read_profile.hpp"
#include "kernel/job/reader.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostBytes = 4 << 20;

// Without a byte-order mark and with LF line ends, so that files from any editor read alike.
std::string normalised(std::string_view text, const std::string& file) {
  const auto refuse = [&](const std::string& problem, const std::string& remedy) {
    throw job_error({file, 0, 0, {}}, problem, remedy);
  };
  if (text.size() > kMostBytes) refuse("the file is larger than 4 MB", "a job file is a few lines");
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
    refuse("the file is UTF-16", "save it as UTF-8");
  if (text.find('\0') != std::string_view::npos) refuse("the file contains NUL bytes", "save it as UTF-8");
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] != '\r' || i + 1 >= text.size() || text[i + 1] != '\n') out += text[i];
  if (out.find('\r') != std::string::npos)
    refuse("lines end with CR alone", "save it with LF or CRLF line ends");
  if (const auto fault = utf8_fault(out))
    refuse("byte " + std::to_string(*fault + 1) + " is not UTF-8", "save it as UTF-8");
  return out;
}

// "Error while parsing floating-point: expected ..." says no more than its second half.
std::string without_prefix(const std::string& problem) {
  const std::string prefix = "Error while parsing ";
  if (!problem.starts_with(prefix)) return problem;
  const auto colon = problem.find(": ");
  return colon == std::string::npos ? problem : "cannot be read: " + problem.substr(colon + 2);
}

toml::table parsed(const std::string& text, const std::string& file) {
  try {
    return toml::parse(text, file);
  } catch (const toml::parse_error& fault) {
    std::string problem(fault.description());
    for (char& c : problem)
      if (c == '\n') c = ' ';
    throw job_error({file, int(fault.source().begin.line), int(fault.source().begin.column), {}},
                    without_prefix(problem), "correct this line");
  }
}

// Modulus at an angle to the fibres: Hankinson-type rule, n = 2 (Wood Handbook FPL-GTR-282, eq. 5-2).
double modulus_at(const TradeRow& timber, double grain) {
  const double along = timber.number("E_along"), across = timber.number("E_across");
  const double s = std::sin(grain) * std::sin(grain), c = std::cos(grain) * std::cos(grain);
  return along * across / (along * s + across * c);
}

double read_grain(Reader& reader, const Node& node) {
  if (!node) return 0;
  if (node.node->is_number()) return radians(reader.number(node));
  const std::string text = reader.text(node);
  if (text == "across") return kPi / 2;
  if (text != "along" && node.node->is_string())
    reader.refuse(node, "read \"" + text + "\"", "allowed along, across or -90 to 90 degrees");
  return 0;
}

void read_ply(Reader& reader, const TradeTables& trade, const Node& node, LayupSpec& layup) {
  if (reader.in(node, "board")) {
    reader.refuse(reader.in(node, "board"), "plies from board are not built yet", "give a timber");
    return;
  }
  const Node timber = reader.in(node, "timber");
  if (!timber) return reader.refuse_missing(timber);
  const TradeRow* row = trade_row(reader, trade, timber, "timbers");
  const double thickness = reader.length(reader.in(node, "thickness"));
  const int count = reader.integer(reader.in(node, "count"));
  const double grain = read_grain(reader, reader.in(node, "grain"));
  const auto maker = reader.length_if(reader.in(node, "maker_radius"));
  if (!row) return;
  const PlySpec ply{row->name, thickness, grain, modulus_at(*row, grain), row->number("E_across"), maker};
  constexpr std::size_t kMostPlies = 500;
  if (layup.plies.size() + std::size_t(count) > kMostPlies)
    return reader.refuse(node, "makes more than 500 plies", "allowed 1 to 500 in all");
  layup.plies.insert(layup.plies.end(), std::size_t(count), ply);
}

LayupSpec read_layup(Reader& reader, const TradeTables& trade) {
  LayupSpec layup;
  const Node plies = reader.at("layup.plies");
  if (!plies)
    reader.refuse_missing(plies);
  else if (reader.size(plies) == 0)
    reader.refuse(plies, "holds no ply", "give at least one {timber, thickness}");
  for (std::size_t i = 0; i < reader.size(plies); ++i) read_ply(reader, trade, reader.item(plies, i), layup);
  const TradeRow* glue = trade_row(reader, trade, reader.at("layup.glue"), "glues");
  const Node line = reader.at("layup.glue_line");
  layup.glue = glue ? glue->name : "";
  layup.glue_line = line ? reader.length(line) : glue ? glue->find("glue_line").value_or(0) : 0;
  const Node cover = reader.at("layup.cover");
  if (cover && cover.node->is_string() && trade.find("boards", *cover.node->value<std::string>())) {
    const TradeRow* board = trade_row(reader, trade, cover, "boards");
    layup.cover = board->number("thickness");
    layup.cover_stock = board->name;
  } else if (cover && cover.node->is_string() && named(cover)) {
    trade_row(reader, trade, cover, "boards");
  } else {
    layup.cover = reader.length(cover);
    layup.cover_stock = "cover sheet " + number(layup.cover);
  }
  return layup;
}

PanelSpec read_panel(Reader& reader) {
  PanelSpec panel;
  panel.width = reader.length(reader.at("panel.width"));
  panel.trim = reader.length(reader.at("panel.trim"));
  panel.count = reader.integer(reader.at("panel.count"));
  const std::string face = reader.text(reader.at("panel.face"));
  panel.face = face == "outer" ? Face::outer : face == "centre" ? Face::centre : Face::inner;
  if (const auto profile = read_profile_node(reader, reader.at("panel.profile"))) panel.profile = *profile;
  return panel;
}

SpringbackSpec read_springback(Reader& reader) {
  const Node node = reader.at("press.springback");
  SpringbackSpec spec;
  if (!node) return spec;
  if (node.node->is_number()) return {SpringbackSpec::Kind::share, reader.number(node), 0, 0};
  if (node.node->is_table())
    return {SpringbackSpec::Kind::test_piece, 0, reader.length(reader.in(node, "form_radius")),
            reader.length(reader.in(node, "part_radius"))};
  const std::string text = reader.text(node);
  if (text == "none")
    spec.kind = SpringbackSpec::Kind::none;
  else if (text != "computed")
    reader.refuse(node, "read \"" + text + "\"",
                  "allowed computed, none, a share like 0.03, or {form_radius, part_radius}");
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
    reader.refuse(node, "read " + as_read(*node.node), allowed);
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

PressSpec read_press(Reader& reader) {
  PressSpec press;
  press.method = reader.text(reader.at("press.method"));
  press.pull = read_pull(reader);
  press.springback = read_springback(reader);
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

std::string sheet_or_empty(Reader& reader) {
  reader.length(reader.at("outputs.cutter"));
  return reader.text(reader.at("outputs.sheet"));
}

OutputSpec read_outputs(Reader& reader) {
  sheet_or_empty(reader);
  return {reader.text(reader.at("outputs.step")), reader.text(reader.at("outputs.dxf")),
          reader.text(reader.at("outputs.paper"))};
}

TradeTables trade_of(Reader& reader, const Sources& sources) {
  const Node data = reader.at("data");
  const std::string name = reader.text(data);
  return name.empty() ? TradeTables() : TradeTables().with(sources.read(name), name);
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

Job read_all(Reader& reader, const TradeTables& trade, const Sources& sources,
             const std::vector<KeyRow>& schemas) {
  Job job;
  job.title = checked_title(reader);
  job.units = reader.units();
  const Node report = reader.at("report_units");
  job.report_units = job.units;
  if (report) unit_from(reader.text(report), job.report_units);
  job.date = read_date(reader, sources);
  job.panel = read_panel(reader);
  job.layup = read_layup(reader, trade);
  job.press = read_press(reader);
  job.caul = read_caul(reader, trade);
  job.formers = read_formers(reader, trade);
  job.beams = read_beams(reader, trade);
  job.straps = read_straps(reader, trade);
  job.outputs = read_outputs(reader);
  job.notes = reader.notes();
  job.own = read_own(reader, schemas);
  for (const char* key :
       {"report_units", "press.pressure", "caul.slats", "outputs.dxf", "outputs.sheet", "outputs.cutter"})
    if (reader.at(key)) job.notes.push_back(std::string(key) + ": read, but nothing uses it yet");
  return job;
}

}  // namespace

JobResult read_job(std::string_view text, const std::string& file, const std::vector<KeyRow>& schemas,
                   const Sources& sources) {
  try {
    const std::string source = normalised(text, file);
    const toml::table root = parsed(source, file);
    Reader reader(root, file, schemas);
    if (!one_panel(reader)) return {std::nullopt, reader.errors()};
    check_schema(reader);
    reader.refuse_unknown_keys();
    reader.read_units();
    Job job = read_all(reader, trade_of(reader, sources), sources, schemas);
    job.number = short_hash(source);
    if (reader.errors().empty()) return {std::move(job), {}};
    return {std::nullopt, reader.errors()};
  } catch (const Error& error) {
    return {std::nullopt, {error}};
  }
}

ProfileResult read_profile(std::string_view text, const std::string& file, const Sources&) {
  try {
    const toml::table root = parsed(normalised(text, file), file);
    Reader reader(root, file, {});
    reader.read_units();
    auto profile = read_profile_node(reader, reader.at("panel.profile"));
    return {std::move(profile), reader.errors()};
  } catch (const Error& error) {
    return {std::nullopt, {error}};
  }
}

}  // namespace lamwright
