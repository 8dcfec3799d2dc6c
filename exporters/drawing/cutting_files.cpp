#include "exporters/drawing/cutting_files.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

#include "exporters/drawing/nested_sheet.hpp"

namespace lamwright::drawing {
namespace {

std::string code_name(char32_t letter) {
  std::array<char, 16> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "U+%04X", static_cast<unsigned>(letter));
  return buffer.data();
}

}  // namespace

CuttingFiles::CuttingFiles(const ExportInput& input, Sink& sink, CuttingFormat format)
    : input_(input), sink_(sink), format_(std::move(format)), options_{input.job.outputs.labels} {}

void CuttingFiles::write_parts() {
  for (const Part& part : input_.plan.parts)
    if (part.board()) write("parts/" + part.name(), cutting_drawing(part, options_));
  for (const ShopAid& aid : input_.plan.aids)
    write("parts/" + aid.part.name(), cutting_drawing(aid.part, options_));
}

void CuttingFiles::write_sheets(const std::vector<CutSheet>& sheets) {
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    write("sheets/" + number, nested_sheet_drawing(sheets[i], "sheet " + number, options_));
  }
}

void CuttingFiles::note_missing() const {
  if (missing_.empty()) return;
  std::string names;
  for (const char32_t letter : missing_) names += (names.empty() ? "" : ", ") + code_name(letter);
  input_.progress.note("cutting files: no letter for " + names + ", drawn as a box");
}

void CuttingFiles::write(const std::string& path, const CuttingDrawing& cutting) {
  sink_.write(path + format_.ending, format_.text(cutting.drawing));
  for (const char32_t letter : cutting.missing)
    if (std::find(missing_.begin(), missing_.end(), letter) == missing_.end()) missing_.push_back(letter);
}

}  // namespace lamwright::drawing
