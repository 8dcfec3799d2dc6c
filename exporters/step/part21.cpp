#include "exporters/step/part21.hpp"

#include <algorithm>
#include <cctype>

#include "shared/error.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

std::string in_quotes(const std::string& encoded) { return std::string(1, '\'').append(encoded) += '\''; }

std::string quoted(std::string_view text) { return in_quotes(step_string(text)); }

constexpr std::size_t kLine = 72;  // customary in exchange files; no reader needs it

bool beyond_ascii(char c) { return static_cast<unsigned char>(c) >= 0x80; }

// Walks a DATA section once, statement by statement.
class Tidier {
 public:
  explicit Tidier(std::string_view data) : data_(data) { out_.reserve(data.size()); }

  std::string run() {
    while (at_ < data_.size()) {
      if (data_[at_] == '\'')
        string();
      else if (negative_zero())
        ++at_;
      else if (broken_line())
        join_line();
      else
        put(data_[at_++]);
    }
    return std::move(out_);
  }

 private:
  // From the opening to the closing apostrophe; a doubled one is part of the text and stays doubled.
  void string() {
    std::string text;
    for (++at_; at_ < data_.size(); ++at_) {
      const char c = data_[at_];
      if (c == '\n' || c == '\r') continue;
      if (c == '\'') {
        if (at_ + 1 >= data_.size() || data_[at_ + 1] != '\'') break;
        ++at_;
        text += c;
      }
      text += c;
    }
    ++at_;
    out_ += in_quotes(encoded(text));
  }

  // The writer breaks lines by the length of its own ids, so they are broken anew: after the first comma
  // past 72.
  void put(char c) {
    out_ += c;
    if (c == '\n') line_ = out_.size();
    if (c != ',' || out_.size() - line_ < kLine) return;
    out_ += '\n';
    line_ = out_.size();
  }

  bool broken_line() const { return data_[at_] == '\n' && !out_.empty() && out_.back() != ';'; }

  // A line end parts two words only where no space or sign does.
  void join_line() {
    while (at_ < data_.size() && std::isspace(static_cast<unsigned char>(data_[at_]))) ++at_;
    const auto word = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '_'; };
    if (at_ < data_.size() && word(data_[at_]) && !out_.empty() && word(out_.back())) out_ += ' ';
  }

  static std::string encoded(const std::string& text) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
      std::size_t end = i;
      while (end < text.size() && beyond_ascii(text[end])) ++end;
      if (end == i)
        out += text[i++];
      else
        out += step_string(std::string_view(text).substr(i, end - i));
      i = std::max(i, end);
    }
    return out;
  }

  bool negative_zero() const {
    const std::string_view rest = data_.substr(at_, 4);
    return rest.size() == 4 && rest.substr(0, 3) == "-0." && (rest[3] == ',' || rest[3] == ')');
  }

  std::string_view data_;
  std::size_t at_ = 0;
  std::string out_;
  std::size_t line_ = 0;  // where the last line of out_ begins
};

}  // namespace

StepSchema step_schema(const std::string& text) {
  if (text == "ap214") return StepSchema::ap214;
  if (text == "ap242") return StepSchema::ap242;
  throw job_error({{}, 0, 0, "outputs.step"},
                  "\"" + text + "\" is not a known schema; allowed are ap214 and ap242",
                  "write ap214 when in doubt: more programs read it");
}

std::string schema_name(StepSchema schema) {
  return schema == StepSchema::ap242
             ? "AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }"
             : "AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }";
}

std::string step_file(const StepHeader& header, std::string_view data) {
  const std::string day = header.date.empty() ? "1970-01-01" : header.date;
  std::string file =
      "ISO-10303-21;\nHEADER;\n"
      "FILE_DESCRIPTION((" +
      quoted(header.description) +
      "),'2;1');\n"
      "FILE_NAME(" +
      quoted(header.file_name) + "," + quoted(day + "T00:00:00") +
      ",(''),(''),'lamwright','lamwright','');\n"
      "FILE_SCHEMA((" +
      quoted(schema_name(header.schema)) + "));\nENDSEC;\nDATA;\n";
  file += data;
  file += "ENDSEC;\nEND-ISO-10303-21;\n";
  return file;
}

std::string tidied_data(std::string_view data) { return Tidier(data).run(); }

int entity_count(std::string_view data, std::string_view entity) {
  const std::string wanted = "= " + std::string(entity) + "(";
  int count = 0;
  for (std::size_t at = data.find(wanted); at != std::string_view::npos; at = data.find(wanted, at + 1)) {
    std::size_t start = at;  // an instance begins a line; no string does, because strings keep to one line
    while (start > 0 && data[start - 1] != '\n') --start;
    const std::string_view id = data.substr(start, at - start);
    if (id.size() > 1 && id.front() == '#' &&
        id.find_first_not_of("0123456789 ", 1) == std::string_view::npos)
      ++count;
  }
  return count;
}

}  // namespace lamwright
