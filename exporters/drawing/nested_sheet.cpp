#include "exporters/drawing/nested_sheet.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/doubled.hpp"
#include "exporters/drawing/piece_name.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

using Operations = std::vector<Operation>;

void append(Operations& out, Operations more) {
  for (Operation& operation : more) out.push_back(std::move(operation));
}

// Two arrows from the corner along the axes, clear of the border so that no line lies on another.
Operations zero_point(double margin) {
  constexpr double kOff = 2, kHead = 1.5;
  const double tip = kOff + std::clamp(margin - 4, 6.0, 12.0);
  Operations out;
  const auto stroke = [&](const Vec2& from, const Vec2& to) {
    out.push_back({layers::kBorder, line(from, to)});
    out.push_back({layers::kBorder, line({from.y(), from.x()}, {to.y(), to.x()})});
  };
  stroke({kOff, kOff}, {tip, kOff});
  stroke({tip, kOff}, {tip - 2 * kHead, kOff + kHead});
  stroke({tip, kOff}, {tip - 2 * kHead, kOff - kHead});
  out.push_back({layers::kBorder, Text{{kOff + 1.5, kOff + 1.5}, "0,0", kSmallHeight}});
  return out;
}

Operations board(const CutSheet& sheet) {
  Operations out{{layers::kBorder, rectangle({{0, 0}, sheet.size})}};
  append(out, zero_point(sheet.margin));
  return out;
}

// Pieces of one bare part that lie the same way, with names of one width, have these at the same place.
class PieceNames {
 public:
  std::optional<Operation> of(const SheetPiece& piece, const Operations& drawn) {
    if (!piece.part.marks().empty()) return piece_name(piece, drawn);
    const auto key = std::make_tuple(piece.part.name(), piece.placing.quarters, text_width(piece.name, 1));
    const auto known = first_.find(key);
    if (known == first_.end()) {
      std::optional<Operation> found = piece_name(piece, drawn);
      first_.emplace(key, First{found, piece.placing.shift});
      return found;
    }
    std::optional<Operation> out = known->second.name;
    if (!out) return std::nullopt;
    Text& text = std::get<Text>(out->shape);
    text.text = piece.name;
    text.at += piece.placing.shift - known->second.shift;
    return out;
  }

 private:
  struct First {
    std::optional<Operation> name;
    Vec2 shift;
  };
  std::map<std::tuple<std::string, int, double>, First> first_;
};

Operations piece_operations(const SheetPiece& piece, PieceNames& names, const CuttingOptions& options) {
  Operations out = chosen(operations(piece.part, piece.placing), options);
  if (!options.labels) return out;
  if (auto name = names.of(piece, out)) out.push_back(std::move(*name));
  return out;
}

bool clear_of_pieces(const CutSheet& sheet, const Segment& bar) {
  return std::none_of(sheet.pieces.begin(), sheet.pieces.end(), [&](const SheetPiece& piece) {
    return piece.part.outline().contains(own_point(piece.placing, bar.from));
  });
}

void refuse_doubled_cuts(const Drawing& drawing) {
  for (const Doubled& doubled : doubled_lines(drawing, layers::kOutline)) {
    const Vec2 at = doubled.first.point(0.5);
    throw geometry_error(
        drawing.title(),
        "two lines to be cut lie on one another near (" + number(at.x(), 1) + ", " + number(at.y(), 1) + ")",
        "lay the parts farther apart");
  }
}

}  // namespace

CuttingDrawing nested_sheet_drawing(const CutSheet& sheet, const std::string& title,
                                    const CuttingOptions& options) {
  constexpr double kBeside = 10, kBars = 120;
  Operations all;
  PieceNames names;
  for (const SheetPiece& piece : sheet.pieces) append(all, piece_operations(piece, names, options));
  append(all, board(sheet));
  const auto allowed = [&](const Segment& bar) { return clear_of_pieces(sheet, bar); };
  // Farther from parts than any cutter that goes round them.
  const BarSearch search{.edge = std::max(15.0, sheet.margin), .step = 25, .clear = 12, .allowed = allowed};
  const auto corner = bars_corner(laid_out(title, sheet.size, all), search);
  append(all, corner_bars(corner.value_or(Vec2(sheet.size.x() + kBeside, kBeside))));
  const Vec2 size = sheet.size + Vec2(corner ? 0 : kBars, 0);
  CuttingDrawing out = stroked(laid_out(title, size, all));
  refuse_doubled_cuts(out.drawing);
  return out;
}

}  // namespace lamwright::drawing
