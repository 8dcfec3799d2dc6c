#include "cli/terminal.hpp"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

#include "cli/signals.hpp"
#include "shared/error.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

bool write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t done = ::write(descriptor, bytes.data(), bytes.size());
    if (done < 0 && errno == EINTR) continue;
    if (done <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(done));
  }
  return true;
}

}  // namespace

void print(std::string_view text) {
  if (!write_all(STDOUT_FILENO, text))
    throw file_error("standard output", std::string("cannot be written: ") + std::strerror(errno), "");
}

void message(std::string_view text) {
  std::string line = "lamwright: " + std::string(text);
  for (char& c : line)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
  // Nobody is left to tell when stderr itself fails.
  (void)write_all(STDERR_FILENO, line + "\n");
}

std::string aligned(const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (widths.size() <= i) widths.push_back(0);
      widths[i] = std::max(widths[i], code_points(row[i]).size());
    }
  std::string text;
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i)
      text +=
          row[i] + (i + 1 < row.size() ? std::string(widths[i] - code_points(row[i]).size() + 2, ' ') : "");
    while (!text.empty() && text.back() == ' ') text.pop_back();
    text += "\n";
  }
  return text;
}

void StageProgress::step(std::string_view stage) {
  if (caught_signal() != 0) throw Cancelled{};
  if (::isatty(STDERR_FILENO)) (void)write_all(STDERR_FILENO, "  " + std::string(stage) + " ...\n");
}

void StageProgress::note(std::string_view sentence) {
  if (std::find(notes_.begin(), notes_.end(), sentence) == notes_.end()) notes_.emplace_back(sentence);
}

}  // namespace lamwright::cli
