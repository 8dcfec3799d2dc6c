#include "shared/csv.hpp"

#include <algorithm>

#include "shared/error.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

constexpr std::string_view kMark = "\xEF\xBB\xBF";

int line_of(std::string_view text, std::size_t byte) {
  return 1 + int(std::count(text.begin(), text.begin() + long(byte), '\n'));
}

void refuse_other_encodings(std::string_view text, const std::string& file) {
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
    throw job_error({file, 1, 0, {}}, "is UTF-16", "save it as CSV UTF-8");
  if (const auto nul = text.find('\0'); nul != std::string_view::npos)
    throw job_error({file, line_of(text, nul), 0, {}}, "holds a NUL byte", "save it as CSV UTF-8");
  if (const auto fault = utf8_fault(text))
    throw job_error({file, line_of(text, *fault), 0, {}}, "holds a byte that is not UTF-8",
                    "save it as CSV UTF-8");
}

// Walks through a text record by record.
class CsvReader {
 public:
  CsvReader(std::string_view text, const std::string& file) : text_(text), file_(file) {}

  std::vector<CsvRecord> records() {
    std::vector<CsvRecord> out;
    while (!done()) out.push_back(record());
    return out;
  }

 private:
  bool done() const { return at_ == text_.size(); }

  bool take(std::string_view what) {
    if (!text_.substr(at_).starts_with(what)) return false;
    at_ += what.size();
    return true;
  }

  [[noreturn]] void refuse(int line, const std::string& problem, const std::string& remedy) const {
    throw job_error({file_, line, 0, {}}, problem, remedy);
  }

  CsvRecord record() {
    CsvRecord out{line_, {}};
    do out.fields.push_back(take("\"") ? quoted() : plain());
    while (take(","));
    end_line();
    return out;
  }

  std::string plain() {
    const auto end = std::min(text_.find_first_of(",\r\n", at_), text_.size());
    std::string field(text_.substr(at_, end - at_));
    if (field.find('"') != std::string::npos)
      refuse(line_, "has a quote amid a field",
             "put the whole field in quotes and write \"\" for each quote in it");
    at_ = end;
    return field;
  }

  std::string quoted() {
    const int opened = line_;
    std::string field;
    while (!done()) {
      if (take("\"\"")) {
        field += '"';
      } else if (take("\"")) {
        return field;
      } else {
        line_ += text_[at_] == '\n';
        field += text_[at_++];
      }
    }
    refuse(opened, "has a quote that is not closed", "close it before the next comma");
  }

  void end_line() {
    if (done()) return;
    if (take("\n") || take("\r\n")) {
      ++line_;
      return;
    }
    if (take("\r")) refuse(line_, "ends with CR alone", "save the file with LF or CRLF line ends");
    refuse(line_, "goes on after a closing quote", "write \"\" for a quote within a field");
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 1;
};

// Blanks at the ends are kept by quotes only: spreadsheets drop them otherwise.
bool needs_quotes(const std::string& field) {
  if (field.empty()) return false;
  return field.find_first_of(",\"\r\n") != std::string::npos || field.front() == ' ' || field.back() == ' ';
}

std::string in_quotes(const std::string& field) {
  std::string out = "\"";
  for (const char c : field) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

}  // namespace

std::vector<CsvRecord> read_csv(std::string_view text, const std::string& file) {
  refuse_other_encodings(text, file);
  if (text.starts_with(kMark)) text.remove_prefix(kMark.size());
  return CsvReader(text, file).records();
}

std::string csv_line(const std::vector<std::string>& fields) {
  std::string out;
  for (std::size_t i = 0; i < fields.size(); ++i)
    out += (i > 0 ? "," : "") + (needs_quotes(fields[i]) ? in_quotes(fields[i]) : fields[i]);
  return out;
}

}  // namespace lamwright
