#include "cli/profile_input.hpp"

#include <map>

#include "cli/files.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

class NotedFiles : public Sources {
 public:
  explicit NotedFiles(const std::filesystem::path& job) : folder_(job.parent_path()), sources_(job) {}
  std::string read(const std::string& name) const override {
    noted_.push_back(folder_ / name);
    return sources_.read(name);
  }
  const std::vector<std::filesystem::path>& noted() const { return noted_; }

 private:
  std::filesystem::path folder_;
  FileSources sources_;
  mutable std::vector<std::filesystem::path> noted_;
};

constexpr const char* kWritten = "profile";  // stands for a form that is in no file

// Line and column would be those of a text that nobody wrote.
std::vector<Error> told_of(const std::string& file, const std::vector<Error>& errors) {
  std::vector<Error> out;
  for (const Error& error : errors) {
    Place where = error.where();
    if (where.file == kWritten)
      where = {file, 0, 0, !file.empty() && where.key == "panel.profile" ? "" : where.key};
    out.emplace_back(error.kind(), where, error.problem(), error.remedy());
  }
  return out;
}

ProfileInput read_written(const std::string& form, const std::string& file) {
  const NotedFiles sources("");
  ProfileResult result = read_profile("panel.profile = " + form, kWritten, sources);
  return {{std::move(result.reading), told_of(file, result.errors)}, sources.noted()};
}

}  // namespace

std::string quoted(const std::string& text) {
  constexpr const char* kHex = "0123456789ABCDEF";
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7F)
      out += std::string("\\u00") + kHex[byte >> 4] + kHex[byte & 15];
    else
      out += (c == '"' || c == '\\' ? "\\" : "") + std::string(1, c);
  }
  return out + "\"";
}

ProfileInput read_form(const std::string& form, const std::string& file, const std::string& more) {
  return read_written("{" + form + " = " + quoted(file) + more + "}", file);
}

ProfileInput read_profile_input(const std::string& input) {
  static const std::map<std::string, std::string> kForms{
      {".csv", "points"}, {".tsv", "points"}, {".txt", "points"}, {".svg", "svg"}, {".dxf", "dxf"}};
  if (input.starts_with("[") || input.starts_with("{")) return read_written(input, "");
  const auto form = kForms.find(small_letters(std::filesystem::path(input).extension().string()));
  if (form != kForms.end()) return read_form(form->second, input, "");
  const NotedFiles sources(input);
  ProfileResult result = read_profile(read_file(input), input, sources);
  std::vector<std::filesystem::path> files = sources.noted();
  files.emplace_back(input);
  return {std::move(result), std::move(files)};
}

}  // namespace lamwright::cli
