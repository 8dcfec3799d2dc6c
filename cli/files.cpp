#include "cli/files.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <chrono>
#include <cstdlib>
#include <cstring>

#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

constexpr std::size_t kMostBytes = 64u << 20;

[[noreturn]] void refuse(const std::filesystem::path& path) {
  throw file_error(path.string(), std::string("cannot be read: ") + std::strerror(errno), "");
}

std::string two(unsigned n) { return (n < 10 ? "0" : "") + std::to_string(n); }

}  // namespace

std::string read_file(const std::filesystem::path& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) refuse(path);
  struct Closer {
    int file;
    ~Closer() { ::close(file); }
  } closer{file};
  std::string bytes;
  char buffer[65536];
  while (true) {
    const ssize_t got = ::read(file, buffer, sizeof buffer);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) refuse(path);
    if (got == 0) return bytes;
    bytes.append(buffer, static_cast<std::size_t>(got));
    if (bytes.size() > kMostBytes)
      throw file_error(path.string(), "is larger than 64 MB", "give a smaller file");
  }
}

std::vector<DataText> FileSources::data() const {
  std::vector<DataText> texts;
  for (const std::string& name : data_) texts.push_back({name, read_file(name)});
  return texts;
}

// The reproducible-builds convention: seconds since 1970, taken as a day in UTC.
std::string FileSources::date() const {
  const char* text = std::getenv("SOURCE_DATE_EPOCH");
  if (!text || !*text) return {};
  long long seconds = 0;
  const char* end = text + std::strlen(text);
  if (std::from_chars(text, end, seconds).ptr != end || seconds < 0 || seconds > 253402300799LL)
    throw file_error("SOURCE_DATE_EPOCH", std::string("read \"") + text + "\"", "give seconds since 1970");
  const std::chrono::year_month_day day{
      std::chrono::floor<std::chrono::days>(std::chrono::sys_seconds{std::chrono::seconds{seconds}})};
  const std::string year = std::to_string(int(day.year()));
  return std::string(4 - year.size(), '0') + year + "-" + two(unsigned(day.month())) + "-" +
         two(unsigned(day.day()));
}

}  // namespace lamwright::cli
