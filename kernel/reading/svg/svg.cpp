#include "kernel/reading/svg/svg.hpp"

#include "kernel/reading/svg/document.hpp"
#include "kernel/reading/svg/notes.hpp"
#include "kernel/reading/svg/true_size.hpp"
#include "kernel/reading/svg/walk.hpp"

namespace lamwright {

DrawnFile read_svg(std::string_view text, const SvgSpec& spec) {
  const svg_reading::Document document(text, spec.file);
  svg_reading::Notes notes;
  const auto sheet = svg_reading::sheet(document.outermost(), spec, notes);
  auto curves = svg_reading::walk(document, sheet, spec.file, notes);
  return {std::move(curves), notes.sentences()};
}

}  // namespace lamwright
