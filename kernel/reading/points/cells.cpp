#include "kernel/reading/points/cells.hpp"

#include <algorithm>

#include "shared/error.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostCells = 100;

bool holds(const TableLine& line, std::string_view what) {
  return line.text.find(what) != std::string_view::npos;
}

bool any_holds(const std::vector<TableLine>& lines, std::string_view what) {
  return std::any_of(lines.begin(), lines.end(), [&](const TableLine& line) { return holds(line, what); });
}

void refuse_lines_without(std::string_view mark, const std::string& name, const std::vector<TableLine>& lines,
                          const std::string& file) {
  const auto with = std::find_if(lines.begin(), lines.end(), [&](auto& line) { return holds(line, mark); });
  const auto without =
      std::find_if_not(lines.begin(), lines.end(), [&](auto& line) { return holds(line, mark); });
  if (without == lines.end()) return;
  throw job_error(
      {file, without->number, 0, {}},
      shown(without->text) + " has no " + name + ", but line " + std::to_string(with->number) + " has one",
      "put the same separator between all cells");
}

// Walks along a line cell by cell.
class CellScanner {
 public:
  CellScanner(const TableLine& line, Separator separator, const std::string& file)
      : line_(line), separator_(separator), file_(file) {}

  std::vector<std::string> cells() {
    std::vector<std::string> out;
    do {
      if (out.size() == kMostCells) refuse("has more than 100 cells", "keep the columns that hold X and Y");
      skip_margin();
      out.push_back(rest().starts_with('"') ? quoted() : plain());
    } while (take_separator());
    return out;
  }

 private:
  std::string_view rest() const { return line_.text.substr(at_); }

  [[noreturn]] void refuse(const std::string& problem, const std::string& remedy) const {
    throw job_error({file_, line_.number, 0, {}}, shown(line_.text) + " " + problem, remedy);
  }

  // Blanks before a cell; tabs too where they do not part cells.
  void skip_margin() {
    while (rest().starts_with(' ') || (separator_ != Separator::tab && rest().starts_with('\t'))) ++at_;
  }

  std::size_t separator_at() const {
    switch (separator_) {
      case Separator::comma:
        return rest().find(',');
      case Separator::semicolon:
        return rest().find(';');
      case Separator::tab:
        return rest().find('\t');
      case Separator::blanks:
        return rest().find(' ');
      case Separator::wide_blanks:
        return rest().find("  ");
    }
    return std::string_view::npos;
  }

  bool take_separator() {
    if (rest().empty()) return false;
    ++at_;
    return true;
  }

  std::string plain() {
    const auto size = std::min(separator_at(), rest().size());
    const std::string_view cell = rest().substr(0, size);
    at_ += size;
    return std::string(trimmed(cell));
  }

  std::string quoted() {
    std::string cell;
    for (++at_; !rest().empty(); ++at_) {
      if (rest().starts_with("\"\"")) {
        ++at_;
      } else if (rest().starts_with('"')) {
        ++at_;
        end_quoted();
        return std::string(trimmed(cell));
      }
      cell += line_.text[at_];
    }
    refuse("has a quote that is not closed", "close it on the same line, or leave it out");
  }

  void end_quoted() {
    const auto size = std::min(separator_at(), rest().size());
    if (!trimmed(rest().substr(0, size)).empty())
      refuse("goes on after a closing quote", "write \"\" for a quote within a cell");
    at_ += size;
  }

  const TableLine& line_;
  Separator separator_;
  const std::string& file_;
  std::size_t at_ = 0;
};

}  // namespace

std::string name_of(Separator separator) {
  switch (separator) {
    case Separator::comma:
      return "commas";
    case Separator::semicolon:
      return "semicolons";
    case Separator::tab:
      return "tabs";
    case Separator::blanks:
      return "blanks";
    case Separator::wide_blanks:
      return "two or more blanks";
  }
  return {};
}

std::vector<Separator> separators(const std::vector<TableLine>& lines, const std::string& file) {
  if (any_holds(lines, ";")) {
    refuse_lines_without(";", "semicolon", lines, file);
    return {Separator::semicolon};
  }
  if (any_holds(lines, "\t")) {
    refuse_lines_without("\t", "tab", lines, file);
    return {Separator::tab};
  }
  std::vector<Separator> out;
  if (any_holds(lines, ",")) out.push_back(Separator::comma);
  if (any_holds(lines, " ")) out.push_back(Separator::blanks);
  if (any_holds(lines, "  ")) out.push_back(Separator::wide_blanks);
  if (out.empty())
    throw job_error({file, lines.front().number, 0, {}}, shown(lines.front().text) + " is one cell",
                    "give two columns, X and Y, with semicolons between the cells");
  return out;
}

std::vector<std::string> cells_of(const TableLine& line, Separator separator, const std::string& file) {
  return CellScanner(line, separator, file).cells();
}

}  // namespace lamwright
