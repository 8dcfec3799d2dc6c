// The folder a build writes into: made complete beside it, then moved into place.
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "kernel/plugin/exporter.hpp"

namespace lamwright::cli {

// Files go into a temporary folder beside the wanted one; commit() moves it into place in one step. Until
// then, and after any failure, the wanted folder is as it was. The wanted folder must be absent, empty, or
// hold the list of files (files.txt) of an earlier build: those are replaced, files of others in it are kept.
class OutputFolder : public Sink {
 public:
  // Checks the folder and makes the temporary one, so that a hopeless place is refused before any work is
  // done. Throws Error (file) naming the folder.
  explicit OutputFolder(const std::filesystem::path& wanted);
  ~OutputFolder() override;
  OutputFolder(const OutputFolder&) = delete;
  OutputFolder& operator=(const OutputFolder&) = delete;

  void write(const std::string& path, std::string_view bytes) override;
  const std::vector<std::string>& written() const override { return written_; }

  // Writes the list and moves everything into place. Throws Error (file); then nothing has changed.
  void commit();

 private:
  void make_temporary();
  void refuse_overwriting() const;
  void carry_over();

  std::filesystem::path wanted_;
  std::filesystem::path temporary_;
  std::vector<std::filesystem::path> made_parents_;  // outermost first
  std::vector<std::string> written_;
  std::vector<std::string> earlier_;  // files of the earlier build
  bool exists_ = false;
  bool committed_ = false;
};

}  // namespace lamwright::cli
