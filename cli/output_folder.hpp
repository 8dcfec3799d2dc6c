// The folder a build writes into: made complete beside it, then moved into place.
#pragma once
#include <sys/types.h>

#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "cli/working_folder.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright::cli {

// Files go into a working folder beside the wanted one; commit() moves it into place in one step. Until
// then, and after any failure, the wanted folder is as it was. The wanted folder must be absent, empty, or
// hold the list of files (files.txt) of an earlier build: those are replaced, what others have in it is kept.
class OutputFolder : public Sink {
 public:
  // Checks the folder and makes the working one, so that a hopeless place is refused before any work is
  // done; so is one that another build is writing into. Throws Error (file) naming the folder.
  explicit OutputFolder(const std::filesystem::path& wanted);

  void write(const std::string& path, std::string_view bytes) override;
  const std::vector<std::string>& written() const override { return written_; }

  // Writes the list and moves everything into place. Throws Error (file); then nothing has changed.
  void commit();

 private:
  std::set<std::string> earlier_files(const std::filesystem::path& named) const;
  bool holds_ours(const std::filesystem::path& folder) const;
  void take_along();
  void take_late_comers();

  std::filesystem::path wanted_;
  MadeFolders made_parents_;
  std::optional<FolderLock> lock_;  // of the wanted folder, when there is one
  WorkingFolder working_;
  std::set<std::string> earlier_;       // files of the earlier build
  std::map<std::string, ino_t> taken_;  // files of others that were taken along
  std::vector<std::string> written_;
};

}  // namespace lamwright::cli
