#include "cli/output_folder.hpp"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <set>

#include "cli/files.hpp"
#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

constexpr const char* kList = "files.txt";
constexpr const char* kListHead = "files of a lamwright build\n";

[[noreturn]] void refuse(const fs::path& path, const std::string& problem, const std::string& remedy = "") {
  throw file_error(path.string(), problem, remedy);
}
[[noreturn]] void refuse_errno(const fs::path& path, const std::string& what) {
  refuse(path, what + ": " + std::strerror(errno));
}

// Paths of the list; nothing when the file is no list of ours. A line that climbs out of the folder is
// ignored.
std::vector<std::string> listed_files(const std::string& text) {
  std::vector<std::string> files;
  if (!text.starts_with(kListHead)) return files;
  std::size_t begin = std::strlen(kListHead);
  while (begin < text.size()) {
    const auto end = std::min(text.find('\n', begin), text.size());
    const std::string line = text.substr(begin, end - begin);
    const fs::path path(line);
    if (!line.empty() && path.is_relative() && line.find("..") == std::string::npos) files.push_back(line);
    begin = end + 1;
  }
  return files;
}

void write_file(const fs::path& path, std::string_view bytes) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (file < 0) refuse_errno(path, "cannot be written");
  while (!bytes.empty()) {
    const ssize_t done = ::write(file, bytes.data(), bytes.size());
    if (done < 0 && errno == EINTR) continue;
    if (done <= 0) {
      const int fault = errno;
      ::close(file);
      errno = fault;
      refuse_errno(path, "cannot be written");
    }
    bytes.remove_prefix(static_cast<std::size_t>(done));
  }
  if (::close(file) != 0) refuse_errno(path, "cannot be written");
}

// Swaps two folders in one step.
bool exchanged(const fs::path& a, const fs::path& b) {
  return ::renameat2(AT_FDCWD, a.c_str(), AT_FDCWD, b.c_str(), RENAME_EXCHANGE) == 0;
}

}  // namespace

OutputFolder::OutputFolder(const fs::path& wanted) {
  std::error_code fault;
  wanted_ = fs::weakly_canonical(fs::absolute(wanted), fault);
  if (fault) refuse(wanted, "is no usable path: " + fault.message());
  if (!wanted_.has_filename()) wanted_ = wanted_.parent_path();
  exists_ = fs::exists(wanted_, fault);
  if (fault) refuse(wanted, "cannot be read: " + fault.message());
  if (exists_ && !fs::is_directory(wanted_)) refuse(wanted, "is a file", "name a folder with -o");
  if (exists_ && !fs::is_empty(wanted_, fault)) {
    const bool ours =
        fs::is_regular_file(wanted_ / kList) && read_file(wanted_ / kList).starts_with(kListHead);
    if (!ours)
      refuse(wanted, "holds files that are not from an earlier build", "name an empty or new folder with -o");
    earlier_ = listed_files(read_file(wanted_ / kList));
  }
  if (fault) refuse(wanted, "cannot be read: " + fault.message());
  make_temporary();
}

void OutputFolder::make_temporary() {
  std::error_code fault;
  std::vector<fs::path> missing;
  for (fs::path up = wanted_.parent_path(); !fs::exists(up, fault) && up.has_relative_path();
       up = up.parent_path())
    missing.push_back(up);
  std::reverse(missing.begin(), missing.end());
  for (const fs::path& folder : missing) {
    if (!fs::create_directory(folder, fault))
      refuse(folder, "cannot be made: " + (fault ? fault.message() : "it is there already"));
    made_parents_.push_back(folder);
  }
  std::string name =
      (wanted_.parent_path() / ("." + wanted_.filename().string() + ".lamwright-XXXXXX")).string();
  if (!::mkdtemp(name.data())) {
    const int cause = errno;
    for (auto folder = made_parents_.rbegin(); folder != made_parents_.rend(); ++folder)
      fs::remove(*folder, fault);
    errno = cause;
    refuse_errno(wanted_.parent_path(), "no folder can be made in it");
  }
  temporary_ = name;
  // mkdtemp makes a private folder; a build is as readable as any folder that the user makes.
  const mode_t mask = ::umask(0);
  ::umask(mask);
  fs::permissions(temporary_, fs::perms(0777 & ~mask), fault);
}

OutputFolder::~OutputFolder() {
  std::error_code fault;
  fs::remove_all(temporary_, fault);
  if (committed_) return;
  for (auto folder = made_parents_.rbegin(); folder != made_parents_.rend(); ++folder)
    fs::remove(*folder, fault);
}

void OutputFolder::write(const std::string& path, std::string_view bytes) {
  const fs::path relative(path);
  ensure(relative.is_relative() && path.find("..") == std::string::npos && path != kList,
         "an exporter writes inside the folder");
  std::error_code fault;
  fs::create_directories((temporary_ / relative).parent_path(), fault);
  if (fault) refuse((temporary_ / relative).parent_path(), "cannot be made: " + fault.message());
  write_file(temporary_ / relative, bytes);
  written_.push_back(path);
}

// Files of others in the old folder (now under the temporary name) move to the new one.
void OutputFolder::carry_over() {
  const std::set<std::string> ours(earlier_.begin(), earlier_.end());
  std::vector<fs::path> foreign;
  for (const auto& entry : fs::recursive_directory_iterator(temporary_)) {
    const std::string relative = fs::relative(entry.path(), temporary_).generic_string();
    if (!entry.is_directory() && relative != kList && !ours.count(relative)) foreign.push_back(relative);
  }
  for (const fs::path& file : foreign) {
    std::error_code fault;
    fs::create_directories((wanted_ / file).parent_path(), fault);
    if (!fs::exists(wanted_ / file)) fs::rename(temporary_ / file, wanted_ / file, fault);
  }
}

// A file of somebody else's where one of ours would go must not vanish.
void OutputFolder::refuse_overwriting() const {
  const std::set<std::string> ours(earlier_.begin(), earlier_.end());
  for (const std::string& name : written_)
    if (exists_ && !ours.count(name) && fs::exists(fs::symlink_status(wanted_ / name)))
      refuse(wanted_ / name, "is not from an earlier build and would be overwritten",
             "move it away or name another folder with -o");
}

void OutputFolder::commit() {
  refuse_overwriting();
  std::string list = kListHead;
  std::vector<std::string> names = written_;
  names.push_back(kList);
  std::sort(names.begin(), names.end());
  for (const std::string& name : names) list += name + "\n";
  write_file(temporary_ / kList, list);
  if (!exists_) {
    if (::rename(temporary_.c_str(), wanted_.c_str()) != 0)
      refuse_errno(wanted_, "the finished folder cannot be moved there");
  } else {
    if (!exchanged(temporary_, wanted_)) refuse_errno(wanted_, "the finished folder cannot be moved there");
    carry_over();
  }
  committed_ = true;
}

}  // namespace lamwright::cli
