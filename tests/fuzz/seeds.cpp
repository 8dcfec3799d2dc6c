#include "tests/fuzz/seeds.hpp"

#include <algorithm>
#include <charconv>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace lamwright::fuzz {
namespace {

namespace fs = std::filesystem;

// What stands between the first and the last quote of a line.
std::string word_of(const std::string& line) {
  const std::size_t begin = line.find('"') + 1, end = line.rfind('"');
  std::string word;
  for (std::size_t i = begin; i < end; ++i) {
    if (line[i] == '\\' && line.substr(i + 1, 1) == "x" && i + 3 < end) {
      unsigned byte = 0;
      std::from_chars(line.data() + i + 2, line.data() + i + 4, byte, 16);
      word += char(byte);
      i += 3;
    } else {
      if (line[i] == '\\') ++i;
      word += line[i];
    }
  }
  return word;
}

std::vector<std::string> words(const fs::path& file) {
  std::istringstream lines(contents(file));
  std::vector<std::string> out;
  for (std::string line; std::getline(lines, line);)
    if (!line.starts_with('#') && line.find('"') != line.rfind('"')) out.push_back(word_of(line));
  return out;
}

}  // namespace

std::string contents(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  return {std::istreambuf_iterator<char>(in), {}};
}

Material seeds(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(folder))
    if (entry.is_regular_file()) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  Material out;
  for (const fs::path& file : files) out.inputs.push_back(contents(file));
  out.sound = out.inputs;
  fs::path dictionary = folder;
  out.words = words(dictionary += ".dict");
  if (out.inputs.empty() || out.words.empty())
    throw std::runtime_error(folder.string() + " needs a seed, and its .dict a word");
  return out;
}

}  // namespace lamwright::fuzz
