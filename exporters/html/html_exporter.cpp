#include "exporters/html/html_exporter.hpp"

#include "exporters/gltf/shared_glb.hpp"
#include "exporters/html/page.hpp"
#include "exporters/json/summary.hpp"

namespace lamwright {

void HtmlExporter::write(const ExportInput& input, Sink& sink) const {
  const Json summary = summary_json(input, {});
  const auto scene = shared_scene(input);
  const html::Told told(summary, input.job.report_units);
  sink.write("job-sheet.html", html::page_text({input, told, *scene}));
}

}  // namespace lamwright
