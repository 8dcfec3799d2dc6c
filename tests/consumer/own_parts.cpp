// A program with a press method and an exporter of its own, linked in.
#include <memory>

#include "checks.hpp"
#include "kernel/plugin/registry.hpp"
#include "markdown_exporter.hpp"
#include "memory.hpp"
#include "stacked_press.hpp"

namespace {

using namespace lamwright;
using namespace consumer;

// A quarter circle, 200 inside, with 15 of trim all round: 180 wide, ten boards of 18.
std::string job(const std::string& press, const std::string& rest) {
  return R"(schema = 1
[panel]
width = 150
profile = [ {bend = 90, radius = 200} ]
[layup]
plies = [ {timber = "birch-yellow", thickness = 1.5, count = 6} ]
[press]
springback = "none"
)" + press +
         "\n" + rest;
}

const std::string kBare = "[caul]\nkind = \"bare\"\n[formers]\nboard = {nominal = 18, measured = 18}\n";

Registry registry() {
  Registry out;
  add_press_methods(out);
  out.add(std::make_unique<StackedPress>());
  out.add(std::make_unique<MarkdownExporter>());
  return out;
}

std::string first_error(const std::string& text) {
  const Evaluation result = evaluated(text, registry());
  return result.errors.empty() ? "none" : result.errors.front().what();
}

void plans(Checks& checks) {
  const Evaluation result = evaluated(job("method = \"stacked\"", kBare), registry());
  if (!result.errors.empty()) return checks.equal("errors", result.errors.front().what(), "none");
  checks.equal("method", result.plan->method, "stacked");
  checks.equal("boards", std::to_string(result.plan->sections.size()), "10");
  checks.holds("it was checked", !result.findings.empty());
  const auto taken = evaluated(job("method = \"auto\"", kBare), registry());
  checks.equal("by choice", taken.plan ? taken.plan->method : "none", "one-part");
}

void refuses(Checks& checks) {
  checks.equal(
      "with a caul", first_error(job("method = \"stacked\"", "")),
      "job.toml: caul.kind: a stack of boards carries no caul; set it to \"bare\", or choose another "
      "method");
  checks.equal("too many", first_error(job("method = \"stacked\"\nstacked = {most_boards = 9}", kBare)),
               "job.toml: press.stacked.most_boards: the stack takes 10 boards, at most 9; take a thicker "
               "board, or raise it");
  checks.equal("unknown key", first_error(job("stacked = {most_board = 9}", kBare)),
               "job.toml:9:25: press.stacked.most_board: is not a known key; did you mean \"most_boards\"?");
}

// Worked by hand. Former: contact edge 3 (cover) inside the face, 197 and a tangent of 15 + 25 at each end,
// so 2 (197 sin 45 + 40 cos 45) = 335.2 long; it falls by 197 - (197 cos 45 - 40 sin 45) = 86 and has 100
// below. Bearers, 46 wide, under boards 1, 4, 7 and 10. Panel: 6 x 1.5 + 5 x 0.1 (glue) = 9.5 thick, 2 (209.5
// sin 45 + 15 cos 45) = 317.5 over all, 209.5 - (200 cos 45 - 15 sin 45) = 78.7 high.
const std::string kTable = R"(# To saw

| part | count | size |
| --- | --- | --- |
| former-lower | 10 | 335.2 x 186 x 18 |
| bearer | 4 | 335.2 x 90 x 46 |
| panel | 1 | 317.5 x 78.7 x 180 |
)";

void writes(Checks& checks) {
  const Registry known = registry();
  const Evaluation result =
      evaluated(job("method = \"stacked\"", kBare + "[outputs.markdown]\nheading = \"To saw\"\n"), known);
  if (!result.plan) return checks.holds("there is a plan", false);
  const MemorySink sink = written(result, *known.exporters().front());
  checks.equal("files", std::to_string(sink.files().size()), "1");
  checks.equal("parts.md", sink.files().count("parts.md") ? sink.files().at("parts.md") : "none", kTable);
}

}  // namespace

int main() {
  Checks checks;
  plans(checks);
  refuses(checks);
  writes(checks);
  return checks.told();
}
