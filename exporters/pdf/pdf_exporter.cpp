#include "exporters/pdf/pdf_exporter.hpp"

#include <array>
#include <charconv>
#include <set>

#include "exporters/drawing/sheets.hpp"
#include "exporters/pdf/pdf_writer.hpp"
#include "exporters/pdf/template_book.hpp"

namespace lamwright {
namespace {

// "U+4E2D": at least four digits.
std::string code_point(char32_t character) {
  std::array<char, 8> digits{};
  const auto end = std::to_chars(digits.begin(), digits.end(), static_cast<std::uint32_t>(character), 16).ptr;
  std::string text(digits.begin(), end);
  for (char& c : text)
    if (c >= 'a') c = static_cast<char>(c - 'a' + 'A');
  return "U+" + std::string(text.size() < 4 ? 4 - text.size() : 0, '0') + text;
}

std::string missing_note(const std::string& file, const std::set<char32_t>& missing) {
  std::string text = file + ": letters that the drawing font lacks are drawn as boxes:";
  for (const char32_t character : missing) text += " " + code_point(character);
  return text;
}

PdfInfo info_of(const ExportInput& input, const std::string& name) {
  return {input.plan.title.empty() ? name : input.plan.title + ": " + name, input.plan.date};
}

// `missing`: letters that the pages hold as boxes already.
void send(const ExportInput& input, Sink& sink, const std::string& file, const PdfText& pdf,
          const std::vector<char32_t>& missing) {
  std::set<char32_t> all(missing.begin(), missing.end());
  all.insert(pdf.missing.begin(), pdf.missing.end());
  if (!all.empty()) input.progress.note(missing_note(file, all));
  sink.write(file, pdf.bytes);
}

}  // namespace

void PdfExporter::write(const ExportInput& input, Sink& sink) const {
  input.progress.step("drawings (PDF)");
  const drawing::SharedDrawings sheets = drawing::sheets(input);
  std::vector<const drawing::Drawing*> pages;
  for (const auto& sheet : sheets) pages.push_back(&sheet->drawing);
  send(input, sink, "drawings.pdf", pdf_text(pages, info_of(input, "drawings")), {});
  input.progress.step("templates (PDF)");
  const TemplateBook book = template_book(input.job, input.plan);
  if (book.pages.empty()) return;
  send(input, sink, "templates.pdf", pdf_text(book.pages, info_of(input, "templates")), book.missing);
}

}  // namespace lamwright
