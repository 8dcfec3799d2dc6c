#include "kernel/reading/points/lines.hpp"

#include <algorithm>

#include "shared/error.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostBytes = 64u << 20;
constexpr std::size_t kMostLines = 1'000'002;  // points, a head and a line of units
constexpr std::string_view kMark = "\xEF\xBB\xBF";
constexpr std::string_view kNoBreakSpace = "\xC2\xA0";

int line_of(std::string_view text, std::size_t byte) {
  return 1 + int(std::count(text.begin(), text.begin() + long(byte), '\n'));
}

void refuse_other_texts(std::string_view text, const std::string& file) {
  const std::string remedy = "save it as UTF-8";
  if (text.size() > kMostBytes)
    throw job_error({file, 0, 0, {}}, "is larger than 64 MB", "leave out points: 1 000 000 are the most");
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
    throw job_error({file, 1, 0, {}}, "is UTF-16", remedy);
  if (const auto nul = text.find('\0'); nul != std::string_view::npos)
    throw job_error({file, line_of(text, nul), 0, {}}, "holds a NUL byte", remedy);
  if (const auto fault = utf8_fault(text))
    throw job_error({file, line_of(text, *fault), 0, {}}, "holds a byte that is not UTF-8", remedy);
}

std::string_view without_blanks_around(std::string_view line) {
  while (line.starts_with(' ')) line.remove_prefix(1);
  while (line.ends_with(' ')) line.remove_suffix(1);
  return line;
}

// Takes the next line off the text.
std::string_view next_line(std::string_view& text) {
  const auto end = text.find('\n');
  std::string_view line = text.substr(0, end);
  text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  if (line.ends_with('\r')) line.remove_suffix(1);
  return line;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  for (;;) {
    if (text.starts_with(' ') || text.starts_with('\t'))
      text.remove_prefix(1);
    else if (text.starts_with(kNoBreakSpace))
      text.remove_prefix(kNoBreakSpace.size());
    else if (text.ends_with(' ') || text.ends_with('\t'))
      text.remove_suffix(1);
    else if (text.ends_with(kNoBreakSpace))
      text.remove_suffix(kNoBreakSpace.size());
    else
      return text;
  }
}

std::string shown(std::string_view text) {
  constexpr std::size_t kLongest = 60;
  if (text.size() <= kLongest) return "\"" + std::string(text) + "\"";
  std::size_t end = kLongest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return "\"" + std::string(text.substr(0, end)) + "...\"";
}

TableLines table_lines(std::string_view text, const std::string& file) {
  refuse_other_texts(text, file);
  if (text.starts_with(kMark)) text.remove_prefix(kMark.size());
  TableLines out;
  for (int number = 1; !text.empty(); ++number) {
    const std::string_view line = next_line(text);
    if (line.find('\r') != std::string_view::npos)
      throw job_error({file, number, 0, {}}, "has a CR alone", "save the file with LF or CRLF line ends");
    if (trimmed(line).starts_with('#'))
      ++out.remarks;
    else if (!trimmed(line).empty())
      out.lines.push_back({number, without_blanks_around(line)});
    if (out.lines.size() > kMostLines)
      throw job_error({file, number, 0, {}}, "is past the 1 000 000 points that a table may hold",
                      "leave out points");
  }
  return out;
}

}  // namespace lamwright
