#include "cli/profile_sheet_file.hpp"

#include <filesystem>

#include "cli/replace_file.hpp"
#include "exporters/svg/svg_writer.hpp"

namespace lamwright::cli {

namespace {

std::vector<std::string> paper_words() { return {"a4", "a3"}; }

// The name of the file that was read, whatever folder it lies in; runs in the command line come from none.
std::string title_of(const std::vector<std::filesystem::path>& files) {
  return files.empty() ? "profile" : files.back().filename().string();
}

void refuse_input(const std::string& file, const std::vector<std::filesystem::path>& inputs) {
  std::error_code unknown;
  for (const std::filesystem::path& input : inputs)
    if (std::filesystem::equivalent(file, input, unknown))
      throw UsageError{"-o \"" + file + "\" is what the profile was read from; name another file"};
}

}  // namespace

std::vector<OptionRow> sheet_options() {
  return {{"out", "o", "FILE.svg", "draw it into this SVG file", Completes::file},
          {.name = "paper",
           .letter = "",
           .value = "SIZE",
           .meaning = "a4 or a3",
           .completes = Completes::words,
           .words = paper_words,
           .assumed = "a4"}};
}

void write_sheet(const po::variables_map& values, const ProfileInput& read,
                 drawing::Drawing (*draw)(const ProfileReading&, const drawing::ProfileSheetSpec&)) {
  const std::string paper = values["paper"].as<std::string>();
  if (paper != "a4" && paper != "a3") throw UsageError{"--paper \"" + paper + "\" is neither a4 nor a3"};
  if (!values.count("out")) return;
  const std::string file = values["out"].as<std::string>();
  if (!file.ends_with(".svg")) throw UsageError{"-o \"" + file + "\" does not end in .svg"};
  refuse_input(file, read.files);
  replace_file(file, svg_text(draw(*read.result.reading, {title_of(read.files), paper})));
}

}  // namespace lamwright::cli
