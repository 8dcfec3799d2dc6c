#include "kernel/job/read_hardware.hpp"

#include <cmath>
#include <tuple>

#include "kernel/job/read_layup.hpp"
#include "kernel/mechanics/sag.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostStock = 12;  // more would take the search for a lay-out too long

// Slats of a strength class, laid with gaps: E t^3 / 12 times the share of the girth that is wood.
void set_slats(const StrengthClass& timber, CaulSpec& caul, std::optional<double> stiffness) {
  caul.modulus_across = timber.modulus_across;
  caul.density = timber.density * caul.coverage;
  caul.crush = timber.crush;
  caul.bending = timber.bending;
  caul.timber = timber.name;
  caul.stiffness = stiffness.value_or(timber.modulus * second_moment(1, caul.thickness) * caul.coverage);
  caul.stiffness_from = stiffness ? "EI as given" : timber.name + " slats, " + timber.source;
}

void read_own_caul(Reader& reader, const TradeTables& trade, const Node& node, CaulSpec& caul) {
  caul.name = "own";
  caul.thickness = reader.length(reader.in(node, "thickness"));
  caul.pitch = reader.length_if(reader.in(node, "pitch"));
  caul.coverage = reader.number(reader.in(node, "coverage"));
  if (const TradeRow* row = trade_row(reader, trade, reader.in(node, "class"), "classes"))
    set_slats(class_of(*row), caul, reader.number_if(reader.in(node, "EI")));
  caul.least_crown_radius = reader.length_if(reader.in(node, "least_crown_radius"));
  caul.least_hollow_radius = reader.length_if(reader.in(node, "least_hollow_radius"));
}

// Thin sheathing is bending plywood with its face grain from former to former, which bends round the curve
// easily; thick sheathing is plywood.
void set_sheathing(const TradeTables& trade, CaulSpec& caul) {
  for (const double sheet : caul.sheathing) {
    constexpr double kThick = 8;  // the thickest bending plywood in the boards table
    const bool thin = sheet <= kThick;
    const Board board = plain_board(trade, thin ? "bending-plywood-5" : "plywood-18", sheet,
                                    thin ? "sheathing of bending plywood" : "sheathing of plywood");
    caul.sheathing_bends.push_back(board_rule(board, sheet, kPi / 2, std::nullopt, std::nullopt, trade));
    caul.sheathing_boards.push_back(board);
    caul.stiffness += board.along * second_moment(1, sheet);
    caul.density = board.density;
    caul.crush = board.crush;
    caul.stiffness_from = board.label + ", " + board.source;
  }
}

void read_sheathing(Reader& reader, CaulSpec& caul) {
  const Node list = reader.at("caul.sheathing");
  constexpr std::size_t kMostSheets = 20;
  if (!reader.fits(list, kMostSheets, "sheets", "give fewer, thicker ones")) return;
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

void read_caul_row(const TradeRow& row, const TradeTables& trade, CaulSpec& caul) {
  caul.name = row.name;
  caul.thickness = row.number("thickness");
  caul.pitch = row.find("pitch");
  caul.coverage = row.find("coverage").value_or(1);
  caul.least_crown_radius = row.find("least_crown_radius");
  caul.least_hollow_radius = row.find("least_hollow_radius");
  const auto named_class = row.texts.find("class");
  const TradeRow* timber =
      trade.find("classes", named_class == row.texts.end() ? "D40" : named_class->second);
  if (!timber)
    throw job_error({{}, 0, 0, "caul.kind"},
                    "the caul row \"" + row.name + "\" names the class \"" + named_class->second +
                        "\", which is no row of the classes table",
                    "known: " + listed(trade.row_names("classes")));
  set_slats(class_of(*timber), caul, row.find("EI"));
}

SlatStock read_slats(Reader& reader, const Node& node, double width) {
  if (!node.node->is_table()) return {reader.length(node), width, std::nullopt};
  if (!reader.in(node, "length")) reader.refuse_missing(reader.in(node, "length"));
  SlatStock stock{reader.length(reader.in(node, "length")), width, std::nullopt};
  if (const Node count = reader.in(node, "count")) stock.count = reader.integer(count);
  if (const Node own = reader.in(node, "width")) {
    stock.width = reader.length(own);
    if (stock.width > width + kSamePoint)
      reader.refuse(own, "a slat " + number(stock.width) + " wide is wider than the caul's, " + number(width),
                    "give the width of a narrower one, or set caul.kind to wider slats");
  }
  return stock;
}

// What the job says is in the rack; else the lengths of the caul's row, as many as are needed.
void read_stock(Reader& reader, const TradeTables& trade, CaulSpec& caul) {
  const double width = *caul.pitch * caul.coverage;
  const Node slats = reader.at("caul.slats");
  if (reader.size(slats) > kMostStock) {
    reader.refuse(slats, "names " + std::to_string(reader.size(slats)) + " kinds of slat",
                  "at most " + std::to_string(kMostStock) + ": leave out the shortest");
    return;
  }
  for (std::size_t i = 0; i < reader.size(slats); ++i)
    caul.stock.push_back(read_slats(reader, reader.item(slats, i), width));
  if (slats && caul.stock.empty()) reader.refuse(slats, "names no slat", "give lengths, as [900, 1200]");
  if (slats) return;
  const TradeRow* row = trade.find("cauls", caul.name);
  const auto lengths =
      row ? row->lists.find("slats") : std::map<std::string, std::vector<double>>::const_iterator();
  if (!row || lengths == row->lists.end()) return;
  for (const double length : lengths->second) caul.stock.push_back({length, width, std::nullopt});
}

SpacingSpec read_spacing(Reader& reader) {
  const Node node = reader.at("formers.spacing");
  SpacingSpec automatic;
  automatic.even = reader.number(reader.at("formers.even"));
  automatic.sag = reader.length(reader.at("formers.sag"));
  if (!node || (node.node->is_string() && *node.node->value<std::string>() == "auto")) return automatic;
  if (node.node->is_string() && named(node)) {
    reader.refuse(node, "read \"" + *node.node->value<std::string>() + "\"",
                  "allowed auto, a greatest pitch like 300, {max_clear = 75} or {count = 12}");
    return {};
  }
  if (!node.node->is_table())
    return {SpacingSpec::Kind::pitch, reader.length(node), 0, automatic.even, automatic.sag};
  const Node clear = reader.in(node, "max_clear"), count = reader.in(node, "count");
  if (bool(clear) == bool(count))
    reader.refuse(node,
                  "gives " + std::string(clear ? "both max_clear and count" : "neither max_clear nor count"),
                  "give one of them");
  if (clear) return {SpacingSpec::Kind::max_clear, reader.length(clear), 0, automatic.even, automatic.sag};
  return {SpacingSpec::Kind::count, 0, count ? reader.integer(count) : 2, automatic.even, automatic.sag};
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
    formers.board_row = plain_board(trade, "plywood-18", formers.thickness, "board, taken as plywood");
  } else if (const TradeRow* row = trade_row(reader, trade, node, "boards")) {
    formers.nominal = row->number("nominal");
    formers.thickness = row->number("thickness");
    formers.board = row->name;
    formers.board_row = board_of(*row);
  }
}

// A few names in full, many by the command that lists them.
std::string known_rows(const TradeTables& trade, const std::string& table) {
  constexpr std::size_t kFew = 8;
  const std::vector<std::string> names = trade.row_names(table);
  if (names.size() <= kFew) return "known: " + listed(names);
  return "lamwright list " + table + " shows all " + std::to_string(names.size());
}

}  // namespace

const TradeRow* trade_row(Reader& reader, const TradeTables& trade, const Node& node,
                          const std::string& table) {
  const std::string name = reader.text(node);
  if (name.empty() && node) return nullptr;
  const TradeRow* row = trade.find(table, name);
  if (row) return row;
  const auto near = nearest_name(name, trade.row_names(table));
  reader.refuse(node, "read \"" + name + "\", which is no row of the " + table + " table",
                (near ? "did you mean \"" + *near + "\"? " : "") + known_rows(trade, table));
  return nullptr;
}

CaulSpec read_caul(Reader& reader, const TradeTables& trade) {
  CaulSpec caul;
  const Node kind = reader.at("caul.kind");
  const std::string text = kind && kind.node->is_string() ? *kind.node->value<std::string>() : "";
  if (kind && kind.node->is_table())
    read_own_caul(reader, trade, kind, caul);
  else if (text == "sheathed" || text == "bare") {
    caul.kind = text == "bare" ? CaulSpec::Kind::bare : CaulSpec::Kind::sheathed;
    caul.name = text;
  } else if (const TradeRow* row = trade_row(reader, trade, kind, "cauls"))
    read_caul_row(*row, trade, caul);
  read_sheathing(reader, caul);
  set_sheathing(trade, caul);
  caul.liner = reader.length(reader.at("caul.liner"));
  if (caul.pitch) read_stock(reader, trade, caul);
  caul.bridge = reader.length(reader.at("caul.bridge"));
  caul.bedding = reader.number(reader.at("caul.bedding"));
  const std::string lagging = reader.text(reader.at("caul.lagging"));
  caul.lagging = lagging == "close" ? Lagging::close : lagging == "open" ? Lagging::open : Lagging::automatic;
  return caul;
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
  constexpr int kUses = 5;  // of a board whose row does not say; common practice, no source
  const int stands = formers.board_row.uses > 0 ? formers.board_row.uses : kUses;
  formers.uses = reader.at("formers.uses") ? reader.integer(reader.at("formers.uses")) : stands;
  std::tie(formers.block_width, formers.block_depth) = read_section(reader, "formers.block", 45, 70);
  std::tie(formers.pressing_width, formers.pressing_depth) =
      read_section(reader, "formers.pressing_beam", 45, 70);
  return formers;
}

BeamSpec read_beams(Reader& reader, const TradeTables& trade) {
  BeamSpec beams;
  std::tie(beams.width, beams.depth) = read_section(reader, "beams.section", 46, 90);
  if (const TradeRow* row = trade_row(reader, trade, reader.at("beams.class"), "classes")) {
    beams.timber_class = row->name;
    beams.timber = class_of(*row);
    beams.modulus = beams.timber.modulus;
    beams.bending = beams.timber.bending;
  }
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
  if (beams.counterbore > beams.width - 10)
    reader.refuse(reader.at("beams.counterbore"),
                  "a counterbore of " + number(beams.counterbore) +
                      " leaves less than 5 of wood beside it in a beam " + number(beams.width) + " wide",
                  "make it smaller");
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
    straps.tension = straps.hand = row->number("tension");
    straps.roller_diameter = row->number("roller");
  }
  if (const Node tension = reader.at("straps.tension")) straps.tension = reader.force(tension);
  if (row && straps.tension > straps.rating)
    reader.refuse(reader.at("straps.tension"),
                  "read " + number(straps.tension) + " N, above the strap's rating",
                  "allowed up to " + number(straps.rating) + " N");
  if (const TradeRow* pin = trade.find("fasteners", "strap-pin")) straps.pin_yield = pin->number("yield");
  straps.pinned = reader.text(reader.at("straps.anchor")) == "pin";
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

}  // namespace lamwright
