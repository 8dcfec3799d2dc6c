#include "kernel/panel/notebook.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "kernel/mechanics/springback.hpp"
#include "shared/csv.hpp"
#include "shared/error.hpp"
#include "shared/limits.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

constexpr std::array kColumns{"date",       "layup",   "glue",     "thickness", "face",
                              "to_neutral", "pressed", "released", "note"};
constexpr std::size_t kNote = kColumns.size() - 1;
constexpr int kDecimals = 6;
constexpr double kThinnest = 0.1, kThickest = 26000;  // 500 sheets of 50 and their glue lines
constexpr double kLeastRadius = 5, kMostRadius = 100000;
constexpr std::size_t kMostPieces = 10'000;
constexpr std::size_t kMostBytes = 4 << 20;
constexpr double kWritten = 1e-6;  // heights read back are rounded to this

std::string length_text(double value) { return number(value, kDecimals); }
std::string range_text(double least, double most) {
  return "allowed " + length_text(least) + " to " + length_text(most) + " mm";
}

bool printable(const std::string& text) {
  return std::none_of(text.begin(), text.end(),
                      [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}
bool printable_lines(std::string text) {
  std::erase_if(text, [](char c) { return c == '\n' || c == '\r' || c == '\t'; });
  return printable(text);
}

std::optional<NotebookFault> words_fault(const NotebookEntry& e) {
  for (const auto& [column, text] :
       {std::pair("date", e.date), {"layup", e.layup}, {"glue", e.glue}, {"note", e.note}})
    if (text.size() > kLongestText)
      return NotebookFault{column, "is a text of " + std::to_string(text.size()) + " bytes",
                           "allowed up to " + std::to_string(kLongestText)};
  if (!printable(e.date))
    return NotebookFault{"date", "holds a control character", "write a day like 2026-03-14"};
  if (e.layup.empty() || !printable(e.layup))
    return NotebookFault{"layup", e.layup.empty() ? "is empty" : "holds a control character",
                         "write it like 7 x birch-yellow 1.5 along"};
  if (e.glue.empty() || !printable(e.glue))
    return NotebookFault{"glue", e.glue.empty() ? "is empty" : "holds a control character",
                         "name the glue's row, as pvac-d3"};
  if (!printable_lines(e.note))
    return NotebookFault{"note", "holds a control character", "use printable text"};
  return std::nullopt;
}

// How far the inner face lies inside the measured one.
double depth(const NotebookEntry& e) {
  return e.face == Face::inner ? 0 : e.face == Face::outer ? e.thickness : e.thickness / 2;
}

std::optional<NotebookFault> range_fault(const std::string& column, double value, double least, double most,
                                         const std::string& more = "") {
  if (value >= least && value <= most) return std::nullopt;
  return NotebookFault{column, "read " + length_text(value), range_text(least, most) + more};
}

// The neutral line lies between the faces, and the inner face has a radius.
std::optional<NotebookFault> figures_fault(const NotebookEntry& e) {
  if (auto fault = range_fault("thickness", e.thickness, kThinnest, kThickest)) return fault;
  const double inner = -depth(e), outer = e.thickness - depth(e);
  if (e.to_neutral < inner - kWritten || e.to_neutral > outer + kWritten)
    return NotebookFault{"to_neutral", "read " + length_text(e.to_neutral),
                         "from the " + to_text(e.face) + (e.face == Face::centre ? "" : " face") +
                             " of a piece of " + length_text(e.thickness) + " " + range_text(inner, outer)};
  const double least = std::max(kLeastRadius, depth(e) + kThinnest);
  if (auto fault = range_fault("pressed", e.pressed, least, kMostRadius)) return fault;
  return e.released ? range_fault("released", *e.released, least, kMostRadius, ", or flat") : std::nullopt;
}

std::string trimmed(const std::string& text) {
  const auto begin = text.find_first_not_of(" \t");
  return begin == std::string::npos ? "" : text.substr(begin, text.find_last_not_of(" \t") - begin + 1);
}

// Cut between characters of UTF-8, never within one.
std::string shown(const std::string& text) {
  std::size_t most = 60;
  if (text.size() <= most) return "\"" + text + "\"";
  while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0) == 0x80) --most;
  return "\"" + text.substr(0, most) + "...\"";
}

// Reads the fields of one row.
class RowReader {
 public:
  RowReader(const CsvRecord& record, const std::string& file) : record_(record), file_(file) {}

  NotebookEntry entry() const {
    if (record_.fields.size() < kNote)
      refuse({}, "holds " + counted(long(record_.fields.size()), "field"), "a row is " + notebook_header());
    for (std::size_t i = kColumns.size(); i < record_.fields.size(); ++i)
      if (!trimmed(record_.fields[i]).empty())
        refuse({}, "goes on after the note with " + shown(record_.fields[i]),
               "put a note that holds commas in quotes");
    NotebookEntry out{trimmed(field(0)), trimmed(field(1)), trimmed(field(2)), length(3),   face(4),
                      length(5),         length(6),         released(7),       field(kNote)};
    if (const auto fault = fault_of(out)) refuse(fault->column, fault->problem, fault->remedy);
    return out;
  }

 private:
  [[noreturn]] void refuse(const std::string& column, const std::string& problem,
                           const std::string& remedy) const {
    throw job_error({file_, record_.line, 0, column}, problem, remedy);
  }

  std::string field(std::size_t i) const { return i < record_.fields.size() ? record_.fields[i] : ""; }

  double length(std::size_t i) const {
    const std::string text = trimmed(field(i));
    double value = 0;
    const auto [end, status] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (text.empty() || status != std::errc() || end != text.data() + text.size() || !std::isfinite(value))
      refuse(kColumns[i], text.empty() ? "is empty" : "read " + shown(text),
             std::string("write mm as a number with a decimal dot") +
                 (std::string(kColumns[i]) == "released" ? ", or flat" : ""));
    return value;
  }

  Face face(std::size_t i) const {
    const std::string text = small_letters(trimmed(field(i)));
    for (const Face face : {Face::inner, Face::outer, Face::centre})
      if (text == to_text(face)) return face;
    refuse(kColumns[i], text.empty() ? "is empty" : "read " + shown(text), "allowed inner, outer or centre");
  }

  std::optional<double> released(std::size_t i) const {
    return small_letters(trimmed(field(i))) == "flat" ? std::nullopt : std::optional(length(i));
  }

  const CsvRecord& record_;
  const std::string& file_;
};

bool blank(const CsvRecord& record) {
  return std::all_of(record.fields.begin(), record.fields.end(),
                     [](const std::string& field) { return trimmed(field).empty(); });
}

bool is_header(const CsvRecord& record) {
  for (std::size_t i = 0; i < std::max(record.fields.size(), kColumns.size()); ++i) {
    const std::string wanted = i < kColumns.size() ? kColumns[i] : "";
    if ((i < record.fields.size() ? trimmed(record.fields[i]) : "") != wanted) return false;
  }
  return true;
}

// Spreadsheets of half the world part fields by semicolons or tabs unless they are told otherwise.
std::string header_remedy(std::string first) {
  std::replace_if(
      first.begin(), first.end(), [](char c) { return c == ';' || c == '\t'; }, ',');
  return small_letters(first).starts_with("date,layup")
             ? "save it as CSV with commas between the fields"
             : "a notebook begins with the line " + notebook_header() + "; name another file";
}

// Looked at by itself: what follows in a file of another kind is no matter.
void refuse_foreign(std::string_view text, const std::string& file) {
  const std::string first(text.substr(0, text.find_first_of("\r\n")));
  try {
    const std::vector<CsvRecord> records = read_csv(first, file);
    if (!records.empty() && is_header(records.front())) return;
  } catch (const Error& fault) {
    throw file_error(file, "is not a shop notebook: its first line " + fault.problem(), fault.remedy());
  }
  const std::string plain = first.starts_with("\xEF\xBB\xBF") ? first.substr(3) : first;
  throw file_error(
      file,
      "is not a shop notebook: its first line " + (plain.empty() ? "is empty" : "reads " + shown(plain)),
      header_remedy(plain));
}

double deviation(const std::vector<NotebookEntry>& pieces, double share) {
  double sum = 0;
  for (const NotebookEntry& piece : pieces) sum += std::pow(share_lost(piece) - share, 2);
  return std::sqrt(sum / double(pieces.size() - 1));
}

double fitted_share(const std::vector<NotebookEntry>& pieces) {
  double lost = 0, square = 0;
  for (const NotebookEntry& piece : pieces) {
    const double k = pressed_curvature(piece);
    lost += (k - released_curvature(piece)) * k;
    square += k * k;
  }
  return lost / square;
}

}  // namespace

double pressed_curvature(const NotebookEntry& entry) { return 1 / (entry.pressed + entry.to_neutral); }

double released_curvature(const NotebookEntry& entry) {
  return entry.released ? 1 / (*entry.released + entry.to_neutral) : 0;
}

double share_lost(const NotebookEntry& entry) {
  if (!entry.released) return 1;
  return share_of_test_piece(entry.pressed + entry.to_neutral, *entry.released + entry.to_neutral);
}

std::optional<NotebookFault> fault_of(const NotebookEntry& entry) {
  if (auto fault = words_fault(entry)) return fault;
  return figures_fault(entry);
}

std::string notebook_header() { return csv_line({kColumns.begin(), kColumns.end()}); }

std::string notebook_line(const NotebookEntry& entry) {
  ensure(!fault_of(entry), "a line of the notebook can be read again");
  return csv_line({entry.date, entry.layup, entry.glue, length_text(entry.thickness), to_text(entry.face),
                   length_text(entry.to_neutral), length_text(entry.pressed),
                   entry.released ? length_text(*entry.released) : "flat", entry.note});
}

std::vector<NotebookEntry> read_notebook(std::string_view text, const std::string& file) {
  constexpr const char* kNewBook = "begin a new notebook, with the pieces that still count";
  if (text.size() > kMostBytes) throw job_error({file, 0, 0, {}}, "is larger than 4 MB", kNewBook);
  refuse_foreign(text, file);
  const std::vector<CsvRecord> records = read_csv(text, file);
  if (records.size() > kMostPieces + 1)
    throw job_error({file, 0, 0, {}}, "holds " + std::to_string(records.size() - 1) + " lines of pieces",
                    "allowed at most " + std::to_string(kMostPieces) + "; " + kNewBook);
  std::vector<NotebookEntry> out;
  for (std::size_t i = 1; i < records.size(); ++i)
    if (!blank(records[i])) out.push_back(RowReader(records[i], file).entry());
  return out;
}

std::vector<NotebookFit> fits(const std::vector<NotebookEntry>& entries) {
  std::vector<NotebookFit> out;
  for (const NotebookEntry& e : entries) {
    const auto same = [&](const NotebookFit& f) { return f.layup == e.layup && f.glue == e.glue; };
    if (std::none_of(out.begin(), out.end(), same)) out.push_back(*fit(entries, e.layup, e.glue));
  }
  return out;
}

std::optional<NotebookFit> fit(const std::vector<NotebookEntry>& entries, const std::string& layup,
                               const std::string& glue) {
  std::vector<NotebookEntry> pieces;
  for (const NotebookEntry& e : entries)
    if (e.layup == layup && e.glue == glue) pieces.push_back(e);
  if (pieces.empty()) return std::nullopt;
  const double share = fitted_share(pieces);
  return NotebookFit{layup, glue, int(pieces.size()), share,
                     pieces.size() > 1 ? std::optional(deviation(pieces, share)) : std::nullopt};
}

std::string fit_text(const NotebookFit& fit) {
  return counted(fit.pieces, "piece") + ", share " + number(fit.share, 4) +
         (fit.spread ? " +- " + number(*fit.spread, 4) : "");
}

}  // namespace lamwright
