#include "exporters/drawing/caul_kinds.hpp"

#include <algorithm>
#include <string_view>

#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

std::string letter(std::size_t index) {
  constexpr std::string_view kLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  std::string out;
  for (std::size_t n = index + 1; n > 0; n = (n - 1) / kLetters.size())
    out.insert(out.begin(), kLetters[(n - 1) % kLetters.size()]);
  return out;
}

std::string piece_text(const SlatPiece& piece, const std::vector<SlatStock>& stock) {
  return size_text(piece.length()) + (piece.cut ? " of " + size_text(stock[piece.stock].length) : "");
}

// Equal neighbours are counted.
std::string pieces_text(const ScheduledRun& run, const PlannedCaul& caul) {
  if (run.pieces.empty()) return size_text(caul.length) + ", not in stock";
  std::vector<std::string> all;
  for (const SlatPiece& piece : run.pieces) all.push_back(piece_text(piece, caul.stock));
  std::string out;
  for (std::size_t i = 0, end = 0; i < all.size(); i = end) {
    for (end = i; end < all.size() && all[end] == all[i];) ++end;
    if (i > 0) out += " + ";
    out += (end - i > 1 ? std::to_string(end - i) + " x " : "") + all[i];
  }
  return out;
}

std::string width_text(const SlatRun& run) {
  const std::string stock = size_text(run.width);
  return run.slat.width() < run.width - kSamePoint ? stock + " ripped to " + size_text(run.slat.width())
                                                   : stock;
}

// Last of the numbers from `first` on that follow one another by `step`, by index.
std::size_t stretch_end(const std::vector<int>& numbers, std::size_t first, int step) {
  std::size_t last = first;
  while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + step) ++last;
  return last;
}

// The same by twos, without the first of numbers that follow by ones.
std::size_t every_other_end(const std::vector<int>& numbers, std::size_t first) {
  const std::size_t last = stretch_end(numbers, first, 2);
  return last > first && stretch_end(numbers, last, 1) > last ? last - 1 : last;
}

// A list longer than a table can be wide says where to look.
std::string which_text(const std::vector<int>& runs) {
  constexpr double kWidest = 75;
  const std::string listed = number_list(runs);
  if (text_width(listed, kSmallHeight) <= kWidest) return listed;
  return "from " + std::to_string(runs.front()) + " to " + std::to_string(runs.back()) + ", see the map";
}

bool jointed(const std::vector<RunKind>& kinds) {
  return std::any_of(kinds.begin(), kinds.end(),
                     [](const RunKind& kind) { return kind.pieces.find(" + ") != std::string::npos; });
}

double column_width(const std::vector<std::vector<std::string>>& rows, std::size_t column,
                    const std::string& head) {
  constexpr double kBeside = 3;  // for what a table keeps clear in a cell
  double width = text_width(head, kSmallHeight);
  for (const auto& row : rows)
    if (column < row.size()) width = std::max(width, text_width(row[column], kSmallHeight));
  return width + kBeside;
}

}  // namespace

std::vector<RunKind> run_kinds(const PlannedCaul& caul) {
  std::vector<RunKind> out;
  for (std::size_t i = 0; i < caul.schedule.runs.size(); ++i) {
    const ScheduledRun& run = caul.schedule.runs[i];
    const std::string pieces = pieces_text(run, caul), width = width_text(run.run);
    auto kind = std::find_if(out.begin(), out.end(), [&](const RunKind& known) {
      return known.pieces == pieces && known.width == width && known.screwed == run.run.fixing;
    });
    if (kind == out.end()) kind = out.insert(kind, {letter(out.size()), pieces, width, run.run.fixing, {}});
    kind->runs.push_back(int(i) + 1);
  }
  return out;
}

std::vector<std::string> run_letters(const PlannedCaul& caul) {
  std::vector<std::string> out(caul.schedule.runs.size());
  for (const RunKind& kind : run_kinds(caul))
    for (const int run : kind.runs) out[std::size_t(run) - 1] = kind.letter;
  return out;
}

std::vector<int> runs_screwed(const PlannedCaul& caul, bool screwed) {
  std::vector<int> out;
  for (std::size_t i = 0; i < caul.schedule.runs.size(); ++i)
    if (caul.schedule.runs[i].run.fixing == screwed) out.push_back(int(i) + 1);
  return out;
}

std::string number_list(const std::vector<int>& numbers) {
  constexpr std::size_t kWorthWords = 4;  // numbers that follow by twos after the first
  std::string out;
  for (std::size_t i = 0, last = 0; i < numbers.size(); i = last + 1) {
    const std::string first = std::to_string(numbers[i]);
    if (i > 0) out += ", ";
    last = stretch_end(numbers, i, 1);
    const std::size_t every_other = every_other_end(numbers, i);
    if (last > i) {
      out += first + "-" + std::to_string(numbers[last]);
    } else if (every_other >= i + kWorthWords) {
      last = every_other;
      out += first + " to " + std::to_string(numbers[last]) + " (every second)";
    } else {
      out += first;
    }
  }
  return out;
}

Table kind_table(const std::vector<RunKind>& kinds) {
  Table table{{{"kind", 0},
               {jointed(kinds) ? "pieces, near to far edge" : "pieces", 0, Anchor::left},
               {"wide", 0},
               {"held by", 0},
               {"runs", 0},
               {"which", 0, Anchor::left}},
              {},
              5};
  for (const RunKind& kind : kinds)
    table.rows.push_back({kind.letter, kind.pieces, kind.width, kind.screwed ? "screws" : "tape",
                          std::to_string(kind.runs.size()), which_text(kind.runs)});
  for (std::size_t i = 0; i < table.columns.size(); ++i)
    table.columns[i].width = column_width(table.rows, i, table.columns[i].head);
  return table;
}

}  // namespace lamwright::drawing
