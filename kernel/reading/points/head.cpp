#include "kernel/reading/points/head.hpp"

#include <algorithm>
#include <array>

#include "kernel/reading/points/head_cell.hpp"
#include "kernel/reading/points/lengths.hpp"
#include "shared/error.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

using Cells = std::vector<std::string>;
// Most telling first: with "station; x; y" the station is no coordinate.
constexpr std::array kNamesOfX{"x", "station", "abscissa"};
constexpr std::array kNamesOfY{"y", "offset", "ordinate"};

bool could_be_name(const std::string& cell) {
  return !begins_like_length(cell) && cell != "nan" && cell != "NaN" && cell != "inf";
}

bool is_head(const Cells& cells) {
  return filled(cells) > 0 && std::all_of(cells.begin(), cells.end(), could_be_name);
}

std::string quoted(const std::string& text) { return "\"" + text + "\""; }

// Reads the lines above the points and finds the columns of X and Y.
class HeadReader {
 public:
  HeadReader(const std::vector<TableLine>& lines, Separator separator, const PointsSpec& spec)
      : lines_(lines), separator_(separator), spec_(spec) {}

  Columns columns() {
    Cells cells = cells_of(lines_.front(), separator_, spec_.file);
    out_.x_unit = out_.y_unit = spec_.units;
    out_.counted_on = lines_.front().number;
    out_.head = is_head(cells);
    if (out_.head && by_blanks()) cells = with_units_joined(cells);
    out_.count = filled(cells);
    if (out_.count < 2) refuse(shown(lines_.front().text) + " is one cell", one_cell_remedy());
    if (out_.head) read_head(cells);
    tell_left_out(cells);
    return out_;
  }

 private:
  [[noreturn]] void refuse(const std::string& problem, const std::string& remedy) const {
    throw job_error({spec_.file, lines_.front().number, 0, {}}, problem, remedy);
  }

  bool by_blanks() const { return separator_ == Separator::blanks || separator_ == Separator::wide_blanks; }

  std::string one_cell_remedy() const {
    return "give two columns, X and Y, with " + name_of(by_blanks() ? Separator::semicolon : separator_) +
           " between the cells";
  }

  void read_head(Cells& cells) {
    cells.resize(out_.count);
    for (const std::string& cell : cells) names_.push_back(named(cell));
    out_.first_row = 1;
    if (lines_.size() > 1) read_line_of_units();
    choose();
    out_.x_unit = unit_of(out_.x, out_.y);
    out_.y_unit = unit_of(out_.y, out_.x);
  }

  HeadCell named(const std::string& cell) const {
    try {
      return head_cell(cell);
    } catch (const Error& error) {
      refuse(error.problem(), error.remedy());
    }
  }

  void read_line_of_units() {
    const Cells cells = cells_of(lines_[1], separator_, spec_.file);
    const bool units = filled(cells) > 0 && filled(cells) <= out_.count &&
                       std::all_of(cells.begin(), cells.end(),
                                   [](const std::string& cell) { return cell.empty() || lone_unit(cell); });
    if (!units) return;
    out_.first_row = 2;
    for (std::size_t i = 0; i < filled(cells); ++i)
      if (const auto unit = lone_unit(cells[i])) names_[i].unit = unit;
  }

  template <std::size_t N>
  std::optional<std::size_t> column(const std::array<const char*, N>& wanted) const {
    for (const std::string name : wanted) {
      const auto is = [&](const HeadCell& cell) { return cell.name == name; };
      const auto at = std::find_if(names_.begin(), names_.end(), is);
      if (at == names_.end()) continue;
      if (std::find_if(at + 1, names_.end(), is) != names_.end())
        refuse("two columns are called " + quoted(name), "rename the one that is not meant");
      return std::size_t(at - names_.begin());
    }
    return std::nullopt;
  }

  void choose() {
    const auto x = column(kNamesOfX), y = column(kNamesOfY);
    if ((!x || !y) && out_.count > 2)
      refuse("the head " + shown(lines_.front().text) + " names no " + (x ? "Y" : "X"),
             "call the two columns x and y");
    out_.x = x ? *x : y ? 1 - *y : 0;
    out_.y = y ? *y : 1 - out_.x;
    if (!x && !y)
      out_.notes.push_back("the first column taken as X, the second as Y");
    else if (out_.x != 0 || out_.y != 1)
      out_.notes.push_back("X from column " + std::to_string(out_.x + 1) + ", Y from column " +
                           std::to_string(out_.y + 1));
  }

  LengthUnit unit_of(std::size_t column, std::size_t other) const {
    const auto unit = names_[column].unit;
    const auto beside = names_[other].unit;
    if (!unit && beside && *beside != spec_.units)
      refuse("the head gives \"" + name_of(*beside) +
                 "\" for one column and no unit for the other, which could be \"" + name_of(*beside) +
                 "\" or \"" + name_of(spec_.units) + "\"",
             "name both units: x [" + name_of(*beside) + "]; y [" + name_of(*beside) + "]");
    return unit.value_or(spec_.units);
  }

  void tell_left_out(const Cells& cells) {
    std::vector<std::string> left_out;
    for (std::size_t i = 0; i < out_.count; ++i)
      if (i != out_.x && i != out_.y)
        left_out.push_back(std::to_string(i + 1) + (out_.head ? " " + shown(cells[i]) : ""));
    if (!left_out.empty())
      out_.notes.push_back(std::string(left_out.size() == 1 ? "column " : "columns ") +
                           listed(left_out, "and") + " left out");
  }

  const std::vector<TableLine>& lines_;
  Separator separator_;
  const PointsSpec& spec_;
  std::vector<HeadCell> names_;
  Columns out_;
};

}  // namespace

std::size_t filled(const std::vector<std::string>& cells) {
  std::size_t n = cells.size();
  while (n > 0 && cells[n - 1].empty()) --n;
  return n;
}

Columns read_columns(const std::vector<TableLine>& lines, Separator separator, const PointsSpec& spec) {
  return HeadReader(lines, separator, spec).columns();
}

}  // namespace lamwright
