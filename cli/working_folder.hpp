// The folder in which a build is made complete, beside the one where it is wanted.
#pragma once
#include <filesystem>
#include <optional>
#include <vector>

#include "cli/folder_lock.hpp"

namespace lamwright::cli {

// Folders that had to be made on the way to another; taken away again unless they are kept.
class MadeFolders {
 public:
  // Makes what is missing. Throws Error (file) naming the folder that cannot be made.
  explicit MadeFolders(const std::filesystem::path& folder);
  ~MadeFolders();
  MadeFolders(const MadeFolders&) = delete;
  MadeFolders& operator=(const MadeFolders&) = delete;
  void keep() { made_.clear(); }

 private:
  void take_away();
  std::vector<std::filesystem::path> made_;  // outermost first
};

// ".NAME.lamwright-build" beside NAME: always the same name, so that two builds into one folder meet there,
// and what a killed build left behind is taken over and cleared by the next. Locked while this object lives,
// then removed unless it was moved.
class WorkingFolder {
 public:
  // Throws Error (file) when another build holds it, or when it cannot be made.
  explicit WorkingFolder(const std::filesystem::path& wanted);
  ~WorkingFolder();
  WorkingFolder(const WorkingFolder&) = delete;
  WorkingFolder& operator=(const WorkingFolder&) = delete;

  const std::filesystem::path& path() const { return path_; }

  // Gives it the name `wanted`, which must be free. Throws Error (file); then nothing has changed.
  void move_to(const std::filesystem::path& wanted);
  // Swaps it with the folder `wanted` in one step: what was there is the working folder now. `wanted_lock` is
  // the lock of the name `wanted`, before and after. Throws Error (file); then nothing has changed.
  void exchange_with(const std::filesystem::path& wanted, FolderLock& wanted_lock);

 private:
  std::filesystem::path path_;
  std::optional<FolderLock> lock_;
};

// The lock of the folder `wanted`, which exists. Throws Error (file) when another build holds it.
FolderLock locked_for_build(const std::filesystem::path& wanted, const std::filesystem::path& named);

}  // namespace lamwright::cli
