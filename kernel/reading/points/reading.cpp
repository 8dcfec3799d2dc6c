#include "kernel/reading/points/reading.hpp"

#include "kernel/reading/points/doubts.hpp"
#include "kernel/reading/points/head.hpp"
#include "kernel/reading/points/head_cell.hpp"
#include "kernel/reading/points/lengths.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

bool is_whole(const std::string& cell) { return cell.find_first_not_of("+-0123456789") == std::string::npos; }

// Reads the rows below the head.
class RowReader {
 public:
  RowReader(Separator separator, const Columns& columns, const PointsSpec& spec)
      : separator_(separator),
        columns_(columns),
        spec_(spec),
        lengths_(spec.file),
        doubts_(columns, separator) {}

  PointsReading read(const std::vector<TableLine>& lines) {
    for (std::size_t i = columns_.first_row; i < lines.size(); ++i) read_row(lines[i]);
    doubts_.settle(lengths_.sign(), spec_.file);
    return {separator_, {std::move(points_), std::move(lines_), notes()}, means()};
  }

 private:
  void read_row(const TableLine& line) {
    std::vector<std::string> cells = cells_of(line, separator_, spec_.file);
    if (filled(cells) > columns_.count || cells.size() < columns_.count) refuse_count(line, cells.size());
    cells.resize(columns_.count);
    refuse_split_cell(line, cells);
    refuse_empty(line, cells);
    const double x = lengths_.read(cells[columns_.x], columns_.x_unit, line.number);
    const double y = lengths_.read(cells[columns_.y], columns_.y_unit, line.number);
    points_.push_back({x, y});
    lines_.push_back(line.number);
    doubts_.see(line, cells);
  }

  [[noreturn]] void refuse_count(const TableLine& line, std::size_t count) const {
    const bool comma = separator_ == Separator::comma;
    throw job_error({spec_.file, line.number, 0, {}},
                    shown(line.text) + " has " + counted(long(count), "cell") + " where line " +
                        std::to_string(columns_.counted_on) + " has " + std::to_string(columns_.count),
                    "put " + name_of(separator_) + " between all cells" +
                        (comma ? ", semicolons where the decimal sign is a comma" : " and nowhere else"));
  }

  void refuse_empty(const TableLine& line, const std::vector<std::string>& cells) const {
    for (const auto& [cell, name] : {std::pair{columns_.x, "X"}, {columns_.y, "Y"}})
      if (cells[cell].empty())
        throw job_error({spec_.file, line.number, 0, {}}, shown(line.text) + " has no " + name,
                        "fill the cell, or leave the line out");
  }

  // "1 1/2 3" is no row of three cells, nor "10 mm 20 mm" one of four.
  void refuse_split_cell(const TableLine& line, const std::vector<std::string>& cells) const {
    if (separator_ != Separator::blanks) return;
    for (std::size_t i = 1; i < cells.size(); ++i)
      if ((begins_like_fraction(cells[i]) && is_whole(cells[i - 1])) ||
          (lone_unit(cells[i]) && begins_like_length(cells[i - 1])))
        throw job_error({spec_.file, line.number, 0, {}},
                        shown(line.text) + " has blanks between its cells and perhaps within them",
                        "put semicolons between the cells");
  }

  std::string means() const {
    const std::string between = name_of(separator_) + " between cells";
    if (lengths_.sign() == DecimalSign::none_seen) return between;
    return between + ", decimal " + (lengths_.sign() == DecimalSign::comma ? "comma" : "point");
  }

  std::string units() const {
    if (!lengths_.bare_seen()) return "units as written";
    const std::string x = name_of(columns_.x_unit), y = name_of(columns_.y_unit);
    return x == y ? x : x + " for X, " + y + " for Y";
  }

  std::vector<std::string> notes() const {
    std::vector<std::string> out{means() + ", " + units()};
    for (const auto& more : {columns_.notes, lengths_.notes()})
      out.insert(out.end(), more.begin(), more.end());
    return out;
  }

  Separator separator_;
  const Columns& columns_;
  const PointsSpec& spec_;
  CellLengths lengths_;
  Doubts doubts_;
  std::vector<Vec2> points_;
  std::vector<int> lines_;
};

}  // namespace

PointsReading read_with(Separator separator, const std::vector<TableLine>& lines, const PointsSpec& spec) {
  const Columns columns = read_columns(lines, separator, spec);
  return RowReader(separator, columns, spec).read(lines);
}

}  // namespace lamwright
