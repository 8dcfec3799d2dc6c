#include "kernel/job/read_job.hpp"

#include <cmath>

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

toml::table parsed(const std::string& text, const std::string& file) {
  try {
    return toml::parse(text, file);
  } catch (const toml::parse_error& fault) {
    std::string problem(fault.description());
    for (char& c : problem)
      if (c == '\n') c = ' ';
    throw job_error({file, int(fault.source().begin.line), int(fault.source().begin.column), {}}, problem,
                    "mend the line; the rest is read after that");
  }
}

// A row of a trade table by the name a node gives.
const TradeRow* trade_row(Reader& reader, const TradeTables& trade, const Node& node,
                          const std::string& table) {
  const std::string name = reader.text(node);
  if (name.empty() && node) return nullptr;
  const TradeRow* row = trade.find(table, name);
  if (row) return row;
  const auto near = nearest_name(name, trade.row_names(table));
  reader.refuse(node, "read \"" + name + "\", which is no row of the " + table + " table",
                (near ? "did you mean \"" + *near + "\"? " : "") + std::string("known: ") +
                    listed(trade.row_names(table)));
  return nullptr;
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
  const PlySpec ply{row->name, thickness, grain, modulus_at(*row, grain), maker};
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

PressSpec read_press(Reader& reader) {
  PressSpec press;
  press.method = reader.text(reader.at("press.method"));
  const Node pull = reader.at("press.pull");
  press.pull = pull && pull.node->is_number() ? number(reader.number(pull), 9) : reader.text(pull);
  press.springback = read_springback(reader);
  press.pressure_required = reader.text(reader.at("press.pressure")) == "required";
  press.beam_tilt = radians(reader.number(reader.at("press.beam_tilt")));
  press.draft = radians(reader.number(reader.at("press.draft")));
  press.guide_rollers = reader.flag(reader.at("press.guide_rollers"));
  reader.length(reader.at("press.pull_at"));
  return press;
}

void read_own_caul(Reader& reader, const Node& node, CaulSpec& caul) {
  caul.name = "own";
  caul.thickness = reader.length(reader.in(node, "thickness"));
  caul.pitch = reader.length_if(reader.in(node, "pitch"));
  caul.coverage = reader.number(reader.in(node, "coverage"));
  caul.stiffness = reader.number_if(reader.in(node, "EI"));
  caul.least_crown_radius = reader.length_if(reader.in(node, "least_crown_radius"));
  caul.least_hollow_radius = reader.length_if(reader.in(node, "least_hollow_radius"));
}

void read_sheathing(Reader& reader, CaulSpec& caul) {
  const Node list = reader.at("caul.sheathing");
  for (std::size_t i = 0; i < reader.size(list); ++i)
    caul.sheathing.push_back(reader.length(reader.item(list, i)));
  for (const double sheet : caul.sheathing) caul.thickness += sheet;
  const bool sheathed = caul.kind == CaulSpec::Kind::sheathed;
  if (sheathed && caul.sheathing.empty())
    reader.refuse(list, "is missing", "give the sheets on the formers, as [3, 3]");
  if (!sheathed && list)
    reader.refuse(list, "is given, but the caul is not sheathed",
                  "set caul.kind = \"sheathed\" or take it out");
}

void read_caul_row(const TradeRow& row, CaulSpec& caul) {
  caul.name = row.name;
  caul.thickness = row.number("thickness");
  caul.pitch = row.find("pitch");
  caul.coverage = row.find("coverage").value_or(1);
  caul.stiffness = row.find("EI");
  caul.least_crown_radius = row.find("least_crown_radius");
  caul.least_hollow_radius = row.find("least_hollow_radius");
}

CaulSpec read_caul(Reader& reader, const TradeTables& trade) {
  CaulSpec caul;
  const Node kind = reader.at("caul.kind");
  const std::string text = kind && kind.node->is_string() ? *kind.node->value<std::string>() : "";
  if (kind && kind.node->is_table())
    read_own_caul(reader, kind, caul);
  else if (text == "sheathed" || text == "bare") {
    caul.kind = text == "bare" ? CaulSpec::Kind::bare : CaulSpec::Kind::sheathed;
    caul.name = text;
  } else if (const TradeRow* row = trade_row(reader, trade, kind, "cauls"))
    read_caul_row(*row, caul);
  read_sheathing(reader, caul);
  caul.liner = reader.length(reader.at("caul.liner"));
  const Node slats = reader.at("caul.slats");
  for (std::size_t i = 0; i < reader.size(slats); ++i) reader.length(reader.item(slats, i));
  reader.number(reader.at("caul.bedding"));
  const std::string lagging = reader.text(reader.at("caul.lagging"));
  caul.lagging = lagging == "close" ? Lagging::close : lagging == "open" ? Lagging::open : Lagging::automatic;
  return caul;
}

SpacingSpec read_spacing(Reader& reader) {
  const Node node = reader.at("formers.spacing");
  if (!node || (node.node->is_string() && *node.node->value<std::string>() == "auto")) return {};
  if (!node.node->is_table()) return {SpacingSpec::Kind::pitch, reader.length(node), 0};
  const Node clear = reader.in(node, "max_clear"), count = reader.in(node, "count");
  if (bool(clear) == bool(count))
    reader.refuse(node,
                  "gives " + std::string(clear ? "both max_clear and count" : "neither max_clear nor count"),
                  "give one of them");
  if (clear) return {SpacingSpec::Kind::max_clear, reader.length(clear), 0};
  return {SpacingSpec::Kind::count, 0, count ? reader.integer(count) : 2};
}

// Two lengths: width, then depth.
std::pair<double, double> read_section(Reader& reader, const std::string& path, double width, double depth) {
  const Node list = reader.at(path);
  if (!list) return {width, depth};
  if (reader.size(list) != 2) {
    reader.refuse(list, "has " + std::to_string(reader.size(list)) + " items",
                  "give width and depth, as [" + number(width) + ", " + number(depth) + "]");
    return {width, depth};
  }
  const double w = reader.length(reader.item(list, 0));
  return {w, reader.length(reader.item(list, 1))};
}

void read_board(Reader& reader, const TradeTables& trade, FormerSpec& formers) {
  const Node node = reader.at("formers.board");
  if (node && node.node->is_table()) {
    formers.nominal = reader.length(reader.in(node, "nominal"));
    formers.thickness =
        reader.in(node, "measured") ? reader.length(reader.in(node, "measured")) : formers.nominal;
    formers.board = "board " + number(formers.nominal);
  } else if (const TradeRow* row = trade_row(reader, trade, node, "boards")) {
    formers.nominal = row->number("nominal");
    formers.thickness = row->number("thickness");
    formers.board = row->name;
  }
}

FormerSpec read_formers(Reader& reader, const TradeTables& trade) {
  FormerSpec formers;
  read_board(reader, trade, formers);
  formers.spacing = read_spacing(reader);
  formers.extend = reader.length(reader.at("formers.extend"));
  formers.min_depth = reader.length(reader.at("formers.min_depth"));
  formers.brace_rows = reader.length(reader.at("formers.brace_rows"));
  formers.groove_depth = reader.length_if(reader.at("formers.groove_depth"));
  formers.clamp_hole = reader.length(reader.at("formers.clamp_hole"));
  formers.clamp_force = reader.force(reader.at("formers.clamp_force"));
  formers.uses = reader.integer(reader.at("formers.uses"));
  std::tie(formers.block_width, formers.block_depth) = read_section(reader, "formers.block", 45, 70);
  std::tie(formers.pressing_width, formers.pressing_depth) =
      read_section(reader, "formers.pressing_beam", 45, 70);
  return formers;
}

BeamSpec read_beams(Reader& reader, const TradeTables& trade) {
  BeamSpec beams;
  std::tie(beams.width, beams.depth) = read_section(reader, "beams.section", 46, 90);
  if (const TradeRow* row = trade_row(reader, trade, reader.at("beams.class"), "classes"))
    beams.timber_class = row->name;
  beams.every = reader.integer(reader.at("beams.every"));
  beams.every_given = bool(reader.at("beams.every"));
  beams.screw_diameter = reader.length(reader.at("beams.screw.diameter"));
  beams.screw_length = reader.length(reader.at("beams.screw.length"));
  beams.screw_reach = reader.length(reader.at("beams.screw.reach"));
  beams.screw_pitch = reader.length(reader.at("beams.screw.pitch"));
  beams.counterbore = reader.length(reader.at("beams.counterbore"));
  const double sink = beams.depth + beams.screw_reach - beams.screw_length;
  if (sink < 0)
    reader.refuse(reader.at("beams.screw.length"),
                  "a screw of " + number(beams.screw_length) +
                      " is longer than the beam's depth and its reach, " +
                      number(beams.depth + beams.screw_reach),
                  "use a shorter screw or raise beams.screw.reach");
  if (sink > beams.depth - 5)
    reader.refuse(reader.at("beams.screw.length"),
                  "a screw of " + number(beams.screw_length) + " would be sunk " + number(sink) +
                      " into a beam " + number(beams.depth) + " deep",
                  "use a longer screw; at least 5 of wood stays under its head");
  if (beams.counterbore <= beams.screw_diameter + 1)
    reader.refuse(reader.at("beams.counterbore"),
                  "a counterbore of " + number(beams.counterbore) + " has no shoulder for a screw of " +
                      number(beams.screw_diameter),
                  "make it larger");
  return beams;
}

StrapSpec read_straps(Reader& reader, const TradeTables& trade) {
  StrapSpec straps;
  const Node kind = reader.at("straps.kind");
  const bool none = kind && kind.node->is_string() && *kind.node->value<std::string>() == "none";
  if (kind) straps.use = none ? StrapSpec::Use::no : StrapSpec::Use::yes;
  const TradeRow* row = none ? trade.find("straps", "strap-50") : trade_row(reader, trade, kind, "straps");
  if (row) {
    straps.kind = row->name;
    straps.width = row->number("width");
    straps.thickness = row->number("thickness");
    straps.ratchet = row->number("ratchet");
    straps.ratchet_width = row->find("ratchet_width").value_or(straps.width);
    straps.rating = row->number("rating");
    straps.tension = row->number("tension");
    straps.roller_diameter = row->number("roller");
  }
  if (const Node tension = reader.at("straps.tension")) straps.tension = reader.force(tension);
  if (row && straps.tension > straps.rating)
    reader.refuse(reader.at("straps.tension"),
                  "read " + number(straps.tension) + " N, above the strap's rating",
                  "allowed up to " + number(straps.rating) + " N");
  straps.exit = radians(reader.number(reader.at("straps.exit")));
  straps.both_ends = reader.text(reader.at("straps.tighten")) == "both-ends";
  straps.friction = reader.number(reader.at("straps.friction"));
  straps.hole = reader.length(reader.at("straps.hole"));
  straps.hole_pitch = reader.length(reader.at("straps.hole_pitch"));
  straps.holes = reader.integer(reader.at("straps.holes"));
  if (straps.holes % 2 == 0)
    reader.refuse(reader.at("straps.holes"), "read " + std::to_string(straps.holes),
                  "give an odd number, so that one hole is in the middle");
  if (straps.hole_pitch < straps.hole + 5 && straps.holes > 1)
    reader.refuse(reader.at("straps.hole_pitch"),
                  "holes of " + number(straps.hole) + " at a pitch of " + number(straps.hole_pitch) +
                      " leave less than 5 of wood",
                  "raise the pitch to " + number(straps.hole + 5));
  return straps;
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

Job read_all(Reader& reader, const TradeTables& trade, const Sources& sources) {
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
    Job job = read_all(reader, trade_of(reader, sources), sources);
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
