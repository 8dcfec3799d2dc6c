#include "cli/profile_sheet_file.hpp"

#include <filesystem>

#include "cli/replace_file.hpp"
#include "exporters/svg/svg_writer.hpp"

namespace lamwright::cli {

void add_sheet_options(po::options_description& options) {
  options.add_options()("out,o", po::value<std::string>(), "draw it into this SVG file");
  options.add_options()("paper", po::value<std::string>()->default_value("a4"), "a4 or a3");
}

namespace {

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
