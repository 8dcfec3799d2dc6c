#include "shared/error.hpp"

#include <string_view>

namespace lamwright {
namespace {

constexpr std::size_t kLongestPlace = 300, kLongestHalf = 1500;  // bytes

bool breaks_line(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }

std::string escaped(char c) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  const auto byte = static_cast<unsigned char>(c);
  return c == '\n' ? "\\n" : c == '\t' ? "\\t" : std::string("\\x") + kDigits[byte / 16] + kDigits[byte % 16];
}

// What others wrote is quoted in messages: it must neither break their line nor fill the screen.
std::string one_line(const std::string& text, std::size_t longest) {
  std::string out;
  for (const char c : text) out += breaks_line(c) ? escaped(c) : std::string(1, c);
  if (out.size() <= longest) return out;
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0) == 0x80) --end;
  return out.substr(0, end) + "...";
}

}  // namespace

std::string to_text(const Place& place) {
  std::string text = place.file;
  if (place.line > 0) text += ":" + std::to_string(place.line);
  if (place.line > 0 && place.column > 0) text += ":" + std::to_string(place.column);
  if (!place.key.empty()) text += (text.empty() ? "" : ": ") + place.key;
  return text;
}

Error::Error(ErrorKind kind, Place where, std::string problem, std::string remedy)
    : kind_(kind),
      where_{one_line(where.file, kLongestPlace), where.line, where.column,
             one_line(where.key, kLongestPlace)},
      problem_(one_line(problem, kLongestHalf)),
      remedy_(one_line(remedy, kLongestHalf)) {
  message_ = to_text(where_);
  if (!message_.empty()) message_ += ": ";
  message_ += problem_;
  if (!remedy_.empty()) message_ += "; " + remedy_;
}

void ensure(bool holds, const char* claim) {
  if (!holds)
    throw Error(ErrorKind::internal, {}, std::string("a rule of the program does not hold: ") + claim,
                "please report it with the job file");
}

}  // namespace lamwright
