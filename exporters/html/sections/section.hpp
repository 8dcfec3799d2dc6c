// The sections of a job sheet, one source file each. A section without a body is left out.
#pragma once
#include <string>
#include <string_view>

#include "exporters/html/told.hpp"
#include "exporters/scene/scene.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright::html {

struct PageInput {
  const ExportInput& input;
  const Told& told;
  const scene::Scene& scene;
};

struct Section {
  std::string_view id;  // of its anchor
  std::string_view title;
  Markup body;
};

// What the page opens with: the job, the verdict in one line, the press, the worst findings.
Markup opening(const PageInput& page);

Section panel_section(const PageInput& page);     // shape as released and pressed, springback
Section layup_section(const PageInput& page);     // sheets of the pack, glue
Section parts_section(const PageInput& page);     // what is made, with pictures
Section closing_section(const PageInput& page);   // straps, loops and clamps, station by station
Section pressure_section(const PageInput& page);  // map and curve
Section findings_section(const PageInput& page);  // every check with basis and advice
Section lists_section(const PageInput& page);     // what to buy and have at hand
Section sheets_section(const PageInput& page);    // boards and lengths as they are cut
Section setup_section(const PageInput& page);     // cautions and the work in steps
Section drawings_section(const PageInput& page);  // the press as drawn
Section notes_section(const PageInput& page);

}  // namespace lamwright::html
