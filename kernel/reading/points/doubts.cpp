#include "kernel/reading/points/doubts.hpp"

#include <algorithm>
#include <charconv>
#include <optional>
#include <span>

#include "shared/error.hpp"

namespace lamwright {
namespace {

using Cells = std::span<const std::string>;

bool is_whole(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

std::string_view unsigned_part(std::string_view text) {
  if (text.starts_with('-') || text.starts_with('+')) text.remove_prefix(1);
  return text;
}

std::optional<long> count_in(const std::string& cell) {
  long value = 0;
  const auto [end, status] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  const bool read = status == std::errc() && end == cell.data() + cell.size();
  return read ? std::optional(value) : std::nullopt;
}

std::string joined(Cells cells) {
  std::string out;
  for (const std::string& cell : cells) out += (out.empty() ? "" : ",") + cell;
  return out;
}

// One number: a cell alone, whole digits before and behind a decimal comma, or groups of three.
bool is_one_number(Cells cells) {
  if (cells.size() == 1) return true;
  const bool decimal = cells.size() == 2 && is_whole(unsigned_part(cells[0])) && is_whole(cells[1]);
  return decimal || has_thousands(joined(cells)) || could_be_thousands(joined(cells), ',');
}

std::optional<std::size_t> two_numbers(Cells cells) {
  for (std::size_t first = 1; first < cells.size(); ++first)
    if (is_one_number(cells.first(first)) && is_one_number(cells.subspan(first))) return first;
  return std::nullopt;
}

}  // namespace

void Doubts::see(const TableLine& line, const std::vector<std::string>& cells) {
  if (++rows_ == 1) {
    first_ = line;
    first_cells_ = cells;
  }
  if (!columns_.head && columns_.count > 2) {
    see_commas(cells);
    see_count(cells.front());
  }
  see_thousands(line, cells[columns_.x]);
  see_thousands(line, cells[columns_.y]);
}

void Doubts::see_commas(const std::vector<std::string>& cells) {
  decimal_commas_ = decimal_commas_ && separator_ == Separator::comma && two_numbers(cells).has_value();
}

void Doubts::see_count(const std::string& cell) {
  const auto count = count_in(cell);
  counts_ = counts_ && count && (rows_ == 1 || *count == last_count_ + 1);
  last_count_ = count.value_or(0);
}

void Doubts::see_thousands(const TableLine& line, const std::string& cell) {
  const std::string_view digits = unsigned_part(cell);
  if (could_be_thousands(cell, '.') || could_be_thousands(cell, ',')) {
    if (thousand_.empty()) {
      thousand_ = cell;
      thousand_line_ = line;
    }
  } else if (is_whole(digits) && digits.size() <= 3) {
    whole_seen_ = whole_seen_ || digits.find_first_not_of('0') != std::string_view::npos;
  } else {
    thousands_ = false;
  }
}

void Doubts::refuse_commas(const std::string& file) const {
  const Cells cells(first_cells_);
  const std::size_t at = *two_numbers(cells);
  throw job_error({file, first_.number, 0, {}},
                  shown(first_.text) + " can be " + std::to_string(cells.size()) + " cells, X " + cells[0] +
                      " and Y " + cells[1] + ", or two numbers with commas within, X " +
                      joined(cells.first(at)) + " and Y " + joined(cells.subspan(at)),
                  "put semicolons between the cells, or a head over them that names x and y");
}

void Doubts::refuse_count(const std::string& file) const {
  throw job_error({file, first_.number, 0, {}},
                  shown(first_.text) + " can be X " + first_cells_[0] + " and Y " + first_cells_[1] +
                      ", or point number " + first_cells_[0] + " at X " + first_cells_[1] + " and Y " +
                      first_cells_[2],
                  "put a head over the columns that names x and y");
}

void Doubts::refuse_thousands(const std::string& file) const {
  throw job_error({file, thousand_line_.number, 0, {}},
                  shown(thousand_) +
                      " can have three decimals, or be a whole number with its thousands set apart, "
                      "since no number of the table settles it",
                  "write thousands without a separator, or the same count of decimals in all numbers");
}

void Doubts::settle(DecimalSign sign, const std::string& file) const {
  if (rows_ == 0) return;
  if (!columns_.head && columns_.count > 2) {
    if (decimal_commas_) refuse_commas(file);
    if (counts_ && rows_ > 1) refuse_count(file);
  }
  if (sign != DecimalSign::none_seen && thousands_ && whole_seen_ && !thousand_.empty())
    refuse_thousands(file);
}

}  // namespace lamwright
