#include "kernel/job/read_layup.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/job/read_hardware.hpp"
#include "kernel/mechanics/bed.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostPlies = 500;

double read_grain(Reader& reader, const Node& node) {
  if (!node) return 0;
  if (node.node->is_number()) return radians(reader.number(node));
  const std::string text = reader.text(node);
  if (text == "across") return kPi / 2;
  if (text != "along" && node.node->is_string())
    reader.refuse(node, "read \"" + text + "\"", "allowed along, across or -90 to 90 degrees");
  return 0;
}

// A board without veneers is one sheet. Poisson's ratios and the share of shear stiffness of plywood (EN 338:
// G = E / 16 of solid timber): from memory.
Orthotropic elastic_of(const Board& board) {
  if (board.plywood()) return {board.along, board.across, board.along / 16, 0.1};
  constexpr double kPoisson = 0.3;
  return {board.along, board.across, board.across / (2 * (1 + kPoisson)), kPoisson};
}

std::vector<PlateLayer> veneers_of(const Board& board, const TradeTables& trade, double thickness,
                                   double grain) {
  const TradeRow* timber = board.veneer_timber.empty() ? nullptr : trade.find("timbers", board.veneer_timber);
  if (board.veneers.empty() || !timber) return {{elastic_of(board), grain, 0, thickness}};
  double sum = 0, height = 0;
  for (const double veneer : board.veneers) sum += veneer;
  std::vector<PlateLayer> out;
  for (const double veneer : board.veneers) {
    const double angle = out.size() % 2 == 0 ? grain : grain + kPi / 2;
    const double to = height + veneer * thickness / sum;
    out.push_back({timber_of(*timber).elastic, angle, height, to});
    height = to;
  }
  out.back().to = thickness;
  return out;
}

// Of the ply bent by itself: all its veneers at once.
double bending_modulus(const std::vector<PlateLayer>& veneers, double thickness) {
  Ply ply;
  ply.veneers = veneers;
  ply.to = thickness;
  ply.modulus = modulus_at_angle(veneers.front().material.along, veneers.front().material.across,
                                 veneers.front().angle);
  return 12 * loose_stiffness(section_of({ply})) / std::pow(thickness, 3);
}

// What all sheets of one entry of layup.plies share.
struct Sheet {
  double thickness, grain;
  std::optional<double> maker, ratio;
};

PlySpec timber_ply(const Timber& timber, const Sheet& sheet) {
  const std::vector<PlateLayer> veneers{{timber.elastic, sheet.grain, 0, sheet.thickness}};
  return {timber.name,
          sheet.thickness,
          sheet.grain,
          modulus_at_angle(timber.elastic.along, timber.elastic.across, sheet.grain),
          timber.elastic.across,
          timber.density,
          veneers,
          timber_rule(timber, sheet.thickness, sheet.grain, sheet.maker, sheet.ratio)};
}

PlySpec board_ply(const Board& board, const TradeTables& trade, const Sheet& sheet) {
  std::vector<PlateLayer> veneers = veneers_of(board, trade, sheet.thickness, sheet.grain);
  const double modulus = bending_modulus(veneers, sheet.thickness);
  const double through = veneers.size() > 1 ? veneers.front().material.across : kHardwoodAcross;
  return {board.name,
          sheet.thickness,
          sheet.grain,
          modulus,
          through,
          board.density,
          std::move(veneers),
          board_rule(board, sheet.thickness, sheet.grain, sheet.maker, sheet.ratio, trade),
          board};
}

// `total` asks for the number of sheets that comes nearest to it.
int sheets(Reader& reader, const Node& node, double thickness, LayupSpec& layup) {
  const Node count = reader.in(node, "count"), total = reader.in(node, "total");
  if (count && total) {
    reader.refuse(total, "is given beside count", "give one of them");
    return 1;
  }
  if (!total) return reader.integer(count);
  const double wanted = reader.length(total);
  const int n = int(std::clamp(std::round(wanted / thickness), 1.0, double(kMostPlies)));
  const double off = n * thickness - wanted;
  const std::string apart = std::abs(off) < 1e-9 ? std::string("exactly")
                            : off < 0            ? number(-off, 3) + " short of"
                                                 : number(off, 3) + " more than";
  layup.notes.push_back(total.key + ": " + std::to_string(n) + " x " + number(thickness, 3) + " = " +
                        number(n * thickness, 3) + ", " + apart + " " + number(wanted, 3));
  return n;
}

void read_ply(Reader& reader, const TradeTables& trade, const Node& node, LayupSpec& layup) {
  const Node timber = reader.in(node, "timber"), board = reader.in(node, "board");
  if (timber && board) return reader.refuse(board, "is given beside timber", "give one of them");
  if (!timber && !board) return reader.refuse_missing(timber);
  const TradeRow* row = trade_row(reader, trade, timber ? timber : board, timber ? "timbers" : "boards");
  const Node thick = reader.in(node, "thickness");
  const bool own = !thick && board && row;  // a board's row knows its thickness
  const double thickness = own ? row->number("thickness") : reader.length(thick);
  const Sheet sheet{thickness, read_grain(reader, reader.in(node, "grain")),
                    reader.length_if(reader.in(node, "maker_radius")),
                    reader.number_if(reader.at("layup.bend_ratio"))};
  const int count = thickness > 0 ? sheets(reader, node, thickness, layup) : 1;
  if (!row || !(thickness > 0)) return;
  const PlySpec ply = timber ? timber_ply(timber_of(*row), sheet) : board_ply(board_of(*row), trade, sheet);
  if (layup.plies.size() + std::size_t(count) > kMostPlies)
    return reader.refuse(node, "makes more than 500 plies", "allowed 1 to 500 in all");
  layup.plies.insert(layup.plies.end(), std::size_t(count), ply);
}

void read_cover(Reader& reader, const TradeTables& trade, LayupSpec& layup) {
  const Node cover = reader.at("layup.cover");
  if (cover && cover.node->is_string() && trade.find("boards", *cover.node->value<std::string>())) {
    layup.cover_board = board_of(*trade_row(reader, trade, cover, "boards"));
    layup.cover = layup.cover_board.thickness;
    layup.cover_stock = layup.cover_board.name;
  } else if (cover && cover.node->is_string() && named(cover)) {
    trade_row(reader, trade, cover, "boards");
    return;
  } else {
    layup.cover = reader.length(cover);
    layup.cover_stock = "cover sheet " + number(layup.cover);
    layup.cover_board = plain_board(trade, "hardboard-3", layup.cover, "cover sheet of hardboard");
  }
  if (layup.cover > 0)
    layup.cover_bend = board_rule(layup.cover_board, layup.cover, 0, std::nullopt, std::nullopt, trade);
}

}  // namespace

Board plain_board(const TradeTables& trade, const std::string& name, double thickness,
                  const std::string& label) {
  const TradeRow* row = trade.find("boards", name);
  ensure(row != nullptr, "the plain board is in the table");
  Board board = board_of(*row);
  for (auto* least : {&board.least_along, &board.least_across})
    if (*least) *least = **least * thickness / board.thickness;
  board.thickness = board.nominal = thickness;
  board.label = label;
  board.veneers.clear();
  return board;
}

LayupSpec read_layup(Reader& reader, const TradeTables& trade) {
  LayupSpec layup;
  const Node plies = reader.at("layup.plies");
  if (!plies)
    reader.refuse_missing(plies);
  else if (reader.size(plies) == 0)
    reader.refuse(plies, "holds no ply", "give at least one {timber, thickness}");
  if (!reader.fits(plies, kMostPlies, "entries", "sheets alike are one entry with a count")) return layup;
  for (std::size_t i = 0; i < reader.size(plies); ++i) read_ply(reader, trade, reader.item(plies, i), layup);
  const TradeRow* glue = trade_row(reader, trade, reader.at("layup.glue"), "glues");
  const Node line = reader.at("layup.glue_line");
  if (glue) layup.glue_row = glue_of(*glue);
  layup.glue = layup.glue_row.name;
  layup.glue_line = line ? reader.length(line) : layup.glue_row.line;
  layup.spread_rate = reader.number(reader.at("layup.spread_rate"));
  read_cover(reader, trade, layup);
  return layup;
}

}  // namespace lamwright
