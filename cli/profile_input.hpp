// Profiles as the command line gives them.
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "kernel/job/read_job.hpp"

namespace lamwright::cli {

struct ProfileInput {
  ProfileResult result;
  std::vector<std::filesystem::path> files;  // that were read
};

// A job file; runs or another form of profile itself ("[{line = 120}]", "{svg = \"front.svg\"}"); or the file
// of points (.csv, .tsv, .txt) or drawing (.svg, .dxf) that such a form would name. Errors name the file, or
// the key alone where the form stands in the command line.
ProfileInput read_profile_input(const std::string& input);

// The same of a file with more keys of its form, written as TOML: ", tolerance = 0.6".
ProfileInput read_form(const std::string& form, const std::string& file, const std::string& more);

// A text in quotes, as TOML writes it.
std::string quoted(const std::string& text);

}  // namespace lamwright::cli
