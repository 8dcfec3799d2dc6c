#include "kernel/supply/pack_sheets.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

void add_plies(const Job& job, const Panel& panel, std::vector<PackSheet>& out) {
  const std::vector<Blank> plies = blanks(panel);
  for (std::size_t i = 0; i < plies.size(); ++i) {
    const PlySpec& spec = job.layup.plies[i];
    const std::string number_of = std::to_string(i + 1);
    out.push_back({"ply " + number_of, spec.timber, spec.thickness, spec.grain, plies[i].girth, 0,
                   plies[i].width, 1, panel.count});
  }
}

// A layer's sheets from the former outward.
std::vector<double> sheets_of(const Job& job, const Layer& layer) {
  if (layer.kind == Layer::Kind::sheathing) return job.caul.sheathing;
  return {layer.thickness};
}

// The job's own words where it names no board.
std::string stock_of(const Job& job, Layer::Kind kind, double thickness) {
  if (kind == Layer::Kind::cover) return job.layup.cover_stock;
  return to_text(kind) + " " + number(thickness, 2);
}

void add_layers(const Job& job, const PressPlan& plan, Layer::Kind kind, std::vector<PackSheet>& out) {
  for (const Layer& layer : plan.layers) {
    if (layer.kind != kind || layer.thickness <= 0) continue;
    double height = 0;
    for (const double sheet : sheets_of(job, layer)) {
      const double girth = offset(layer.inner, height + sheet / 2, to_text(kind)).girth();
      height += sheet;
      // Sheathing bends most easily with its face grain from former to former.
      const double grain = kind == Layer::Kind::sheathing ? kPi / 2 : 0;
      out.push_back({to_text(kind), stock_of(job, kind, sheet), sheet, grain, girth, 0,
                     plan.panel.blank_width(), 1, 1});
    }
  }
}

// Sheathing covers the contact edge past the pack and is longer than what lies in the pack.
void set_cut(std::vector<PackSheet>& sheets, std::size_t from) {
  double longest = 0;
  for (std::size_t i = from; i < sheets.size(); ++i) longest = std::max(longest, sheets[i].girth);
  for (std::size_t i = from; i < sheets.size(); ++i) sheets[i].cut = std::ceil(longest - kSamePoint);
}

const Board* board_of(const Job& job, const PackSheet& sheet) {
  for (const PlySpec& ply : job.layup.plies)
    if (ply.board && ply.timber == sheet.stock && sheet.use.starts_with("ply")) return &*ply.board;
  if (sheet.use == to_text(Layer::Kind::cover)) return &job.layup.cover_board;
  if (sheet.use == to_text(Layer::Kind::sheathing))
    for (std::size_t i = 0; i < job.caul.sheathing.size(); ++i)
      if (std::abs(job.caul.sheathing[i] - sheet.thickness) < kSamePoint)
        return &job.caul.sheathing_boards[i];
  return nullptr;
}

bool without_grain(const Board& board) { return board.kind == "fibreboard" || board.kind == "hardboard"; }

// How the piece lies on the board, whose face grain runs along its length. Grain at an angle wants a larger
// piece.
WantedRectangle rectangle_of(const PackSheet& sheet, const Board& board) {
  if (without_grain(board)) return {sheet.use, {sheet.cut, sheet.width}, sheet.total, true};
  const double c = std::abs(std::cos(sheet.grain)), s = std::abs(std::sin(sheet.grain));
  const Vec2 size{sheet.cut * c + sheet.width * s, sheet.cut * s + sheet.width * c};
  return {sheet.use, {rounded(size.x(), 6), rounded(size.y(), 6)}, sheet.total, false};
}

BlankSheets& of_board(std::vector<BlankSheets>& all, const Job& job, const PackSheet& sheet,
                      const Board& board) {
  for (BlankSheets& one : all)
    if (one.board == sheet.stock && std::abs(one.thickness - sheet.thickness) < kSamePoint) return one;
  all.push_back({sheet.stock, sheet.thickness, {board.sheet, job.outputs.kerf, 0}, {}, {}});
  return all.back();
}

void add_wanted(BlankSheets& sheets, WantedRectangle piece) {
  for (WantedRectangle& known : sheets.wanted)
    if ((known.size - piece.size).norm() < kSamePoint && known.turns == piece.turns) {
      known.count += piece.count;
      return;
    }
  sheets.wanted.push_back(std::move(piece));
}

}  // namespace

std::vector<PackSheet> pack_sheets(const Job& job, const PressPlan& plan) {
  std::vector<PackSheet> all;
  add_plies(job, plan.panel, all);
  add_layers(job, plan, Layer::Kind::cover, all);
  set_cut(all, 0);
  const std::size_t pack = all.size();
  add_layers(job, plan, Layer::Kind::sheathing, all);
  add_layers(job, plan, Layer::Kind::liner, all);
  set_cut(all, pack);
  return all;
}

std::vector<BlankSheets> blank_sheets(const Job& job, const std::vector<PackSheet>& pack,
                                      std::vector<std::string>& notes) {
  std::vector<BlankSheets> all;
  for (const PackSheet& sheet : pack)
    if (const Board* board = board_of(job, sheet))
      add_wanted(of_board(all, job, sheet, *board), rectangle_of(sheet, *board));
  for (BlankSheets& one : all) {
    one.plan = cut_rectangles(one.wanted, one.sheet);
    for (const std::size_t i : one.plan.oversize)
      notes.push_back(one.wanted[i].name + " (" + number(one.wanted[i].size.x(), 1) + " x " +
                      number(one.wanted[i].size.y(), 1) +
                      " with its grain along the board) fits on no board of " + one.board + " " +
                      number(one.sheet.size.x()) + " x " + number(one.sheet.size.y()) +
                      ": join it from two pieces, or put a larger board into your data.");
  }
  return all;
}

}  // namespace lamwright
