#include "kernel/reading/dxf/dxf.hpp"

#include "kernel/reading/dxf/curves.hpp"
#include "kernel/reading/dxf/limits.hpp"

namespace lamwright {
namespace {

using namespace dxf_reading;

constexpr std::string_view kSentinel(" Binary DXF\r\n\x1a\0", 15);
constexpr std::size_t kSentinelAt = 7, kLookedAt = 1024;
constexpr const char* kAsText = "save it as text DXF (ASCII), R2000 for choice";

bool begins_with(std::string_view text, std::string_view start) {
  return text.substr(0, start.size()) == start;
}

// What the bytes are when they are no text; empty when they may be.
std::string foreign(std::string_view text) {
  if (text.size() > kSentinelAt && begins_with(text.substr(kSentinelAt), kSentinel))
    return "a binary DXF file";
  if (begins_with(text, "AC1") || begins_with(text, "AC2.")) return "a DWG file, no DXF";
  if (begins_with(text, "\xFF\xFE") || begins_with(text, "\xFE\xFF")) return "in UTF-16";
  if (text.substr(0, kLookedAt).find('\0') != std::string_view::npos) return "a binary file";
  return {};
}

void ensure_text(std::string_view text, const std::string& file) {
  if (text.empty()) throw fault(file, 0, "the file is empty", "save the drawing again");
  if (text.size() > kMostBytes)
    throw fault(file, 0, "the file is larger than 256 MB", "save only the curves of the profile");
  if (const std::string found = foreign(text); !found.empty())
    throw fault(file, 0, "the file is " + found, kAsText);
}

std::string_view without_mark(std::string_view text) {
  return begins_with(text, "\xEF\xBB\xBF") ? text.substr(3) : text;
}

}  // namespace

DrawnFile read_dxf(std::string_view text, const DxfSpec& spec) {
  ensure_text(text, spec.file);
  Document read = document(without_mark(text), spec.file);
  const DrawingUnit unit = drawing_unit(read.units, spec.units, spec.file);
  Tally tally;
  DrawnFile out{curves(read, unit.mm, spec.file, tally), {unit.note}};
  for (std::string& note : tally.notes()) out.notes.push_back(std::move(note));
  return out;
}

}  // namespace lamwright
