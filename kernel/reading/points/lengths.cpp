#include "kernel/reading/points/lengths.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "kernel/reading/points/lines.hpp"
#include "shared/error.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kLongestCell = 60;
constexpr double kFarthest = 1e10;  // mm; coordinates of a land survey stay below

std::string name_of(DecimalSign sign) { return sign == DecimalSign::comma ? "comma" : "point"; }

// A plain number, also with an exponent as measuring devices write it.
std::optional<double> plain_number(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  // Letters first would be inf and nan, a second sign no number.
  if (text.empty() || text.find_first_of("0123456789.-") != 0) return std::nullopt;
  double value = 0;
  const auto [end, status] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (status != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

bool ends_with_unit(std::string_view text) {
  for (const std::string_view mark : {"\"", "'", "\u2033", "\u201D", "\u2032", "\u2019"})
    if (text.ends_with(mark)) return true;
  return (text.back() >= 'a' && text.back() <= 'z');
}

}  // namespace

bool begins_like_length(std::string_view cell) {
  constexpr std::string_view kFirst = "0123456789+-.,";
  if (cell.empty()) return false;
  if (kFirst.find(cell.front()) != std::string_view::npos) return true;
  return cell.starts_with("\u2212") || begins_like_fraction(cell);
}

bool begins_like_fraction(std::string_view cell) {
  for (const std::string_view first : {"½", "¼", "¾", "⅛", "⅜", "⅝", "⅞", "⅓", "⅔"})
    if (cell.starts_with(first)) return true;
  const auto bar = cell.find_first_not_of("0123456789");
  return bar != std::string_view::npos && bar > 0 && cell[bar] == '/';
}

// The cell with a decimal point, after its decimal sign was held against that of the cells before.
std::string CellLengths::with_points(const std::string& cell, int line) {
  const bool comma = cell.find(',') != std::string::npos;
  if (!comma && cell.find('.') == std::string::npos) return cell;
  if (cell.ends_with(','))
    throw job_error({file_, line, 0, {}}, shown(cell) + " is not a length",
                    "write decimals behind the comma");
  const DecimalSign sign = comma ? DecimalSign::comma : DecimalSign::point;
  if (sign_ == DecimalSign::none_seen) {
    sign_ = sign;
    sign_line_ = line;
    sign_cell_ = cell;
  }
  if (sign != sign_)
    throw job_error({file_, line, 0, {}},
                    shown(cell) + " has a decimal " + name_of(sign) + ", but " + shown(sign_cell_) +
                        " on line " + std::to_string(sign_line_) + " has a decimal " + name_of(sign_),
                    "write all numbers with the same sign, and thousands without a separator");
  std::string out = cell;
  std::replace(out.begin(), out.end(), ',', '.');
  return out;
}

Reading CellLengths::reading(const std::string& cell, LengthUnit bare, int line) {
  const std::string text = with_points(cell, line);
  if (const auto value = plain_number(text)) {
    bare_seen_ = bare_seen_ || *value != 0;
    return {*value * factor(bare), {}};
  }
  try {
    const Reading out = parse_length(text, bare);
    bare_seen_ = bare_seen_ || (out.value != 0 && !ends_with_unit(text));
    return out;
  } catch (const Error& error) {
    // The decimal comma was replaced, so the error's own words would show another cell.
    throw job_error({file_, line, 0, {}}, text == cell ? error.problem() : shown(cell) + " is not a length",
                    error.remedy());
  }
}

void CellLengths::see_note(const std::string& note, int line) {
  if (note.empty()) return;
  if (first_note_.empty())
    first_note_ = "line " + std::to_string(line) + ": " + note;
  else
    ++more_notes_;
}

double CellLengths::read(const std::string& cell, LengthUnit bare, int line) {
  const Place place{file_, line, 0, {}};
  if (cell.size() > kLongestCell)
    throw job_error(place, shown(cell) + " is not a length", "put separators between the cells");
  if (has_thousands(cell))
    throw job_error(place, shown(cell) + " has a separator of thousands", "write 1234.5 or 1234,5");
  const Reading length = reading(cell, bare, line);
  if (!(std::abs(length.value) <= kFarthest))
    throw job_error(place, shown(cell) + " lies beyond 10 000 km", "measure from a point near the panel");
  see_note(length.note, line);
  return length.value;
}

std::vector<std::string> CellLengths::notes() const {
  if (first_note_.empty()) return {};
  return {first_note_ + (more_notes_ > 0 ? ", and " + std::to_string(more_notes_) + " more like it" : "")};
}

}  // namespace lamwright
