#include "cli/working_folder.hpp"

#include <fcntl.h>
#include <stdio.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse_busy(const fs::path& wanted) {
  throw file_error(wanted.string(), "another build is writing there",
                   "wait until it is done, or name another folder with -o");
}

[[noreturn]] void refuse_move(const fs::path& wanted) {
  throw file_error(wanted.string(),
                   std::string("the finished folder cannot be moved there: ") + std::strerror(errno), "");
}

// Made unless it is there; another process may make it at the same moment.
void make(const fs::path& folder, const std::string& problem) {
  std::error_code fault;
  fs::create_directory(folder, fault);
  if (fault) throw file_error(folder.string(), problem + fault.message(), "");
}

void clear(const fs::path& folder) {
  std::error_code fault;
  std::vector<fs::path> entries;
  for (const auto& entry : fs::directory_iterator(folder, fault)) entries.push_back(entry.path());
  for (const fs::path& entry : entries) fs::remove_all(entry, fault);
  if (!fs::is_empty(folder, fault) || fault)
    throw file_error(folder.string(), "is left from an earlier build and cannot be cleared", "remove it");
}

}  // namespace

MadeFolders::MadeFolders(const fs::path& folder) {
  std::error_code fault;
  std::vector<fs::path> missing;
  for (fs::path up = folder; !fs::exists(up, fault) && up.has_relative_path(); up = up.parent_path())
    missing.push_back(up);
  std::reverse(missing.begin(), missing.end());
  for (const fs::path& each : missing) {
    if (fs::create_directory(each, fault)) made_.push_back(each);
    if (!fault) continue;
    take_away();
    throw file_error(each.string(), "cannot be made: " + fault.message(), "");
  }
}

MadeFolders::~MadeFolders() { take_away(); }

// Only those that are empty: another build may have put something there since.
void MadeFolders::take_away() {
  std::error_code fault;
  for (auto folder = made_.rbegin(); folder != made_.rend(); ++folder) fs::remove(*folder, fault);
  made_.clear();
}

// Whoever holds the lock of what lies at the path owns it. A folder that was renamed or removed between
// opening and locking is no longer there: then all is tried again.
WorkingFolder::WorkingFolder(const fs::path& wanted)
    : path_(wanted.parent_path() / ("." + wanted.filename().string() + ".lamwright-build")) {
  do {
    make(path_, "cannot be made: ");
    lock_.reset();
    auto lock = FolderLock::if_free(path_);
    if (!lock) refuse_busy(wanted);
    lock_.emplace(std::move(*lock));
  } while (!lock_->is_at(path_));
  clear(path_);
}

// After a move the name may belong to the next build already.
WorkingFolder::~WorkingFolder() {
  try {
    std::error_code fault;
    if (lock_->is_at(path_)) fs::remove_all(path_, fault);
  } catch (const Error&) {
    // Whose it is cannot be found out: the next build sees to it.
  }
}

void WorkingFolder::move_to(const fs::path& wanted) {
  if (::rename(path_.c_str(), wanted.c_str()) != 0) refuse_move(wanted);
}

void WorkingFolder::exchange_with(const fs::path& wanted, FolderLock& wanted_lock) {
  if (::renameat2(AT_FDCWD, path_.c_str(), AT_FDCWD, wanted.c_str(), RENAME_EXCHANGE) != 0)
    refuse_move(wanted);
  std::swap(*lock_, wanted_lock);
}

FolderLock locked_for_build(const fs::path& wanted, const fs::path& named) {
  auto lock = FolderLock::if_free(wanted);
  if (!lock || !lock->is_at(wanted)) refuse_busy(named);
  return std::move(*lock);
}

}  // namespace lamwright::cli
