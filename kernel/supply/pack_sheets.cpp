#include "kernel/supply/pack_sheets.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

bool without_grain(const Board& board) { return board.kind == "fibreboard" || board.kind == "hardboard"; }

std::optional<double> ply_grain(const PlySpec& spec) {
  if (spec.board && without_grain(*spec.board)) return std::nullopt;
  return spec.grain;
}

void add_plies(const Job& job, const Panel& panel, std::vector<PackSheet>& out) {
  const std::vector<Blank> plies = blanks(panel);
  for (std::size_t i = 0; i < plies.size(); ++i) {
    const PlySpec& spec = job.layup.plies[i];
    const int ply = int(i) + 1;
    out.push_back({PackSheet::Kind::ply, ply, "ply " + std::to_string(ply), spec.timber, spec.thickness,
                   ply_grain(spec), plies[i].girth, 0, plies[i].width, 1, panel.count});
  }
}

PackSheet::Kind kind_of(Layer::Kind kind) {
  switch (kind) {
    case Layer::Kind::cover:
      return PackSheet::Kind::cover;
    case Layer::Kind::sheathing:
      return PackSheet::Kind::sheathing;
    case Layer::Kind::liner:
      return PackSheet::Kind::liner;
    case Layer::Kind::panel:
    case Layer::Kind::bed_caul:
    case Layer::Kind::top_caul:
      break;
  }
  return PackSheet::Kind::caul;
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

// Sheathing bends most easily with its face grain from former to former.
std::optional<double> layer_grain(const Job& job, Layer::Kind kind) {
  if (kind == Layer::Kind::sheathing) return kPi / 2;
  if (kind == Layer::Kind::cover && !without_grain(job.layup.cover_board)) return 0;
  return std::nullopt;
}

// Slatted cauls are laid out by their schedules.
void add_layers(const Job& job, const PressPlan& plan, Layer::Kind kind, std::vector<PackSheet>& out) {
  for (const Layer& layer : plan.layers) {
    if (layer.kind != kind || layer.thickness <= 0 || !layer.slats.empty()) continue;
    double height = 0;
    for (const double sheet : sheets_of(job, layer)) {
      const double girth = offset(layer.inner, height + sheet / 2, to_text(kind)).girth();
      height += sheet;
      out.push_back({kind_of(kind), 0, to_text(kind), stock_of(job, kind, sheet), sheet,
                     layer_grain(job, kind), girth, 0, plan.panel.blank_width(), 1, 1});
    }
  }
}

// Those from `from` on are cut to the longest of them.
void set_cut(std::vector<PackSheet>& sheets, std::size_t from) {
  double longest = 0;
  for (std::size_t i = from; i < sheets.size(); ++i) longest = std::max(longest, sheets[i].girth);
  for (std::size_t i = from; i < sheets.size(); ++i) sheets[i].cut = std::ceil(longest - kSamePoint);
}

const Board* board_of(const Job& job, const PackSheet& sheet) {
  switch (sheet.kind) {
    case PackSheet::Kind::ply: {
      const auto& board = job.layup.plies[std::size_t(sheet.ply) - 1].board;
      return board ? &*board : nullptr;
    }
    case PackSheet::Kind::cover:
      return &job.layup.cover_board;
    case PackSheet::Kind::sheathing:
      for (std::size_t i = 0; i < job.caul.sheathing.size(); ++i)
        if (std::abs(job.caul.sheathing[i] - sheet.thickness) < kSamePoint)
          return &job.caul.sheathing_boards[i];
      break;
    case PackSheet::Kind::liner:
    case PackSheet::Kind::caul:
      break;
  }
  return nullptr;
}

// How the piece lies on a board, whose face grain runs along its length. Grain at an angle wants a larger
// piece.
WantedRectangle rectangle_of(const PackSheet& sheet) {
  if (!sheet.grain) return {sheet.use, {sheet.cut, sheet.width}, sheet.total, true};
  const double c = std::abs(std::cos(*sheet.grain)), s = std::abs(std::sin(*sheet.grain));
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
  for (const Layer::Kind kind : {Layer::Kind::bed_caul, Layer::Kind::top_caul}) {
    const std::size_t cauls = all.size();
    add_layers(job, plan, kind, all);
    set_cut(all, cauls);
  }
  return all;
}

std::vector<BlankSheets> blank_sheets(const Job& job, const std::vector<PackSheet>& pack,
                                      std::vector<std::string>& notes) {
  std::vector<BlankSheets> all;
  for (const PackSheet& sheet : pack)
    if (const Board* board = board_of(job, sheet))
      add_wanted(of_board(all, job, sheet, *board), rectangle_of(sheet));
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
