#include "exporters/drawing/table_and_words.hpp"

#include <algorithm>

#include "exporters/drawing/profile_frame.hpp"
#include "exporters/drawing/run_rows.hpp"
#include "exporters/drawing/table_block.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kListedShare = 0.42;  // of the sheet's height that a table may take
constexpr std::size_t kMostLines = 12;
constexpr double kLeastBeside = 70;  // width that sentences need beside a table
constexpr double kApart = 2.5;

std::size_t most_rows(const Table& table, const Paper& paper) {
  return std::size_t(kListedShare * drawing_field(paper).size().y() / table.row_height) - 1;
}

// How many rows are left out stands where the names are.
Table cut_to(Table table, std::size_t rows) {
  if (table.rows.size() <= rows) return table;
  const std::size_t left_out = table.rows.size() - rows + 1;
  table.rows.resize(rows - 1);
  table.rows.push_back({"", std::to_string(left_out) + " more"});
  return table;
}

}  // namespace

TableAndWords::TableAndWords(const Table& runs, const std::vector<std::string>& sentences, const Paper& paper)
    : words_width_(block_width(paper)) {
  if (!runs.rows.empty()) {
    const std::size_t folds = folds_within(runs, words_width_), rows = most_rows(runs, paper);
    whole_ = runs.rows.size() <= rows * folds;
    table_ = folded(cut_to(runs, rows * folds), rows, folds);
  }
  words_ = sheet_words(sentences, words_width_, kMostLines);
  const double right = words_width_ - table_size(table_).x() - kFrameGap;
  if (runs.rows.empty() || right < kLeastBeside) return;
  const SheetWords narrow = sheet_words(sentences, right, kMostLines);
  if (std::max(table_height(), narrow.height()) >= height()) return;
  words_ = narrow;
  words_width_ = right;
  beside_ = true;
}

double TableAndWords::table_height() const {
  return table_.columns.empty() ? 0 : table_size(table_).y() + kApart;
}

double TableAndWords::height() const {
  return beside_ ? std::max(table_height(), words_.height()) : table_height() + words_.height();
}

void TableAndWords::draw(Drawing& drawing, const Vec2& corner) const {
  if (!table_.columns.empty()) add_table(drawing, table_, corner);
  const Vec2 from = beside_ ? Vec2(table_size(table_).x() + kFrameGap, 0) : Vec2(0, -table_height());
  add_words(drawing, words_, corner + from, words_width_);
}

}  // namespace lamwright::drawing
