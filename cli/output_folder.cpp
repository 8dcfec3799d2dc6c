#include "cli/output_folder.hpp"

#include <fcntl.h>
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

// Paths of a list of ours. A line that climbs out of the folder is ignored.
std::set<std::string> listed_files(const std::string& text) {
  std::set<std::string> files;
  std::size_t begin = std::strlen(kListHead);
  while (begin < text.size()) {
    const auto end = std::min(text.find('\n', begin), text.size());
    const std::string line = text.substr(begin, end - begin);
    const fs::path path(line);
    if (!line.empty() && path.is_relative() && line.find("..") == std::string::npos) files.insert(line);
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

// Whole and without links, so that what lies beside it is found.
fs::path resolved(const fs::path& named) {
  std::error_code fault;
  const fs::path path = fs::weakly_canonical(fs::absolute(named), fault);
  if (fault) refuse(named, "is no usable path: " + fault.message());
  return path.has_filename() ? path : path.parent_path();
}

bool is_folder(const fs::path& path, const fs::path& named) {
  std::error_code fault;
  const fs::file_status found = fs::status(path, fault);
  if (found.type() == fs::file_type::none) refuse(named, "cannot be read: " + fault.message());
  if (fs::exists(found) && !fs::is_directory(found)) refuse(named, "is a file", "name a folder with -o");
  return fs::exists(found);
}

// Of a folder that is none, or where there is a file, nothing is made.
fs::path parent_of(const fs::path& path, const fs::path& named) {
  (void)is_folder(path, named);
  return path.parent_path();
}

[[noreturn]] void refuse_overwriting(const fs::path& path) {
  refuse(path, "is not from an earlier build and would be overwritten",
         "move it away or name another folder with -o");
}

// Of what is at the path itself, a link included.
fs::file_type type_of(const fs::path& path) {
  std::error_code fault;
  const fs::file_type type = fs::symlink_status(path, fault).type();
  if (type == fs::file_type::none) refuse(path, "cannot be read: " + fault.message());
  return type;
}

// The file system's number of what is at the path; 0 where nothing is. While a second name holds a file its
// number is not given to another.
ino_t number_of(const fs::path& path) {
  struct stat found {};
  return ::lstat(path.c_str(), &found) == 0 ? found.st_ino : 0;
}

struct Entry {
  fs::path path;  // below the folder
  fs::file_type type;
};

// Everything below a folder, folders before what is in them; links are not followed.
std::vector<Entry> entries_below(const fs::path& folder, std::error_code& fault) {
  std::vector<Entry> found;
  for (auto entry = fs::recursive_directory_iterator(folder, fault);
       !fault && entry != fs::recursive_directory_iterator(); entry.increment(fault))
    found.push_back({entry->path().lexically_relative(folder), entry->symlink_status(fault).type()});
  return found;
}

// The same file under a second name, where the file system has such; else a copy.
void link_or_copy(const fs::path& from, fs::file_type type, const fs::path& to) {
  std::error_code fault;
  if (type == fs::file_type::symlink)
    fs::copy_symlink(from, to, fault);
  else if (fs::create_hard_link(from, to, fault); fault)
    fs::copy_file(from, to, fault);
  if (fault) refuse(from, "is not from an earlier build and cannot be kept: " + fault.message());
}

void make_folder(const fs::path& folder) {
  std::error_code fault;
  fs::create_directories(folder, fault);
  if (fault) refuse(folder, "cannot be made: " + fault.message());
}

}  // namespace

OutputFolder::OutputFolder(const fs::path& named)
    : wanted_(resolved(named)), made_parents_(parent_of(wanted_, named)), working_(wanted_) {
  // Looked at again: another build may have come to its end meanwhile.
  if (!is_folder(wanted_, named)) return;
  lock_.emplace(locked_for_build(wanted_, named));
  earlier_ = earlier_files(named);
}

std::set<std::string> OutputFolder::earlier_files(const fs::path& named) const {
  std::error_code fault;
  const bool empty = fs::is_empty(wanted_, fault);
  if (fault) refuse(named, "cannot be read: " + fault.message());
  if (empty) return {};
  const fs::path list = wanted_ / kList;
  const std::string text = type_of(list) == fs::file_type::regular ? read_file(list) : std::string();
  if (!text.starts_with(kListHead))
    refuse(named, "holds files that are not from an earlier build", "name an empty or new folder with -o");
  std::set<std::string> files = listed_files(text);
  files.insert(kList);
  return files;
}

void OutputFolder::write(const std::string& path, std::string_view bytes) {
  const fs::path relative(path);
  ensure(relative.is_relative() && path.find("..") == std::string::npos && path != kList,
         "an exporter writes inside the folder");
  make_folder((working_.path() / relative).parent_path());
  write_file(working_.path() / relative, bytes);
  written_.push_back(path);
}

// Files of others are put beside the new ones under a second name. A place that both want is refused: nothing
// of theirs must vanish.
void OutputFolder::take_along() {
  std::error_code fault;
  const std::vector<Entry> entries = entries_below(wanted_, fault);
  if (fault) refuse(wanted_, "cannot be read: " + fault.message());
  for (const Entry& entry : entries) {
    const fs::path from = wanted_ / entry.path, to = working_.path() / entry.path;
    const fs::file_type there = type_of(to);
    if (entry.type == fs::file_type::directory) {
      if (there != fs::file_type::not_found && there != fs::file_type::directory) refuse_overwriting(from);
      if (!holds_ours(entry.path)) make_folder(to);
    } else if (!earlier_.count(entry.path.generic_string())) {
      if (there != fs::file_type::not_found) refuse_overwriting(from);
      make_folder(to.parent_path());
      taken_[entry.path.generic_string()] = number_of(from);
      link_or_copy(from, entry.type, to);
    }
  }
}

// A folder with files of the earlier build goes with them.
bool OutputFolder::holds_ours(const fs::path& folder) const {
  const std::string head = folder.generic_string() + "/";
  const auto first = earlier_.lower_bound(head);
  return first != earlier_.end() && first->starts_with(head);
}

// What others put into the old folder, now under the working name, or saved anew there, since it was looked
// through. By now the build is in place; what cannot be moved is no reason to call it failed.
void OutputFolder::take_late_comers() {
  std::error_code fault;
  for (const Entry& entry : entries_below(working_.path(), fault)) {
    const std::string name = entry.path.generic_string();
    if (entry.type == fs::file_type::directory || entry.type == fs::file_type::none || earlier_.count(name))
      continue;
    const fs::path from = working_.path() / entry.path, to = wanted_ / entry.path;
    const auto taken = taken_.find(name);
    // Where the file that was taken along still stands, a newer one may replace it, and nothing else.
    const bool late = taken == taken_.end()
                          ? number_of(to) == 0
                          : number_of(from) != taken->second && number_of(to) == taken->second;
    if (!late) continue;
    fs::create_directories(to.parent_path(), fault);
    fs::rename(from, to, fault);
  }
}

void OutputFolder::commit() {
  std::vector<std::string> names = written_;
  names.push_back(kList);
  std::sort(names.begin(), names.end());
  std::string list = kListHead;
  for (const std::string& name : names) list += name + "\n";
  write_file(working_.path() / kList, list);
  if (lock_) take_along();
  if (lock_)
    working_.exchange_with(wanted_, *lock_);
  else
    working_.move_to(wanted_);
  made_parents_.keep();
  if (lock_) take_late_comers();
}

}  // namespace lamwright::cli
