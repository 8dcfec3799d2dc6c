#include "markdown_exporter.hpp"

#include "shared/number.hpp"

namespace consumer {

using namespace lamwright;

namespace {

std::string row(const PressPlan& plan, std::size_t part) {
  const Vec3 size = plan.parts[part].box().size();
  return "| " + plan.parts[part].name() + " | " + std::to_string(instances(plan, part)) + " | " +
         number(size.x(), 1) + " x " + number(size.y(), 1) + " x " + number(size.z(), 1) + " |\n";
}

}  // namespace

std::vector<KeyRow> MarkdownExporter::keys() const {
  return {{"heading", KeyType::text, "\"Parts\"", 0, 0, {}, "over the table"}};
}

void MarkdownExporter::write(const ExportInput& input, Sink& sink) const {
  std::string text = "# " + input.job.own.texts.at("outputs.markdown.heading") + "\n\n";
  text += "| part | count | size |\n| --- | --- | --- |\n";
  for (std::size_t part = 0; part < input.plan.parts.size(); ++part) text += row(input.plan, part);
  sink.write("parts.md", text);
}

}  // namespace consumer
