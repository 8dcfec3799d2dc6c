#include "exporters/drawing/sheets.hpp"

#include "exporters/drawing/plan_bodies.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

std::string warning(const Finding& finding) {
  const std::string unit = finding.unit.empty() ? "" : " " + finding.unit;
  std::string text = "FAILED: " + finding.title + ": " + number(finding.value, 3) + unit + ", limit " +
                     number(finding.limit, 3) + unit;
  if (!finding.where.empty()) text += " (" + finding.where + ")";
  return text;
}

std::vector<std::string> warnings(const std::vector<Finding>& findings) {
  std::vector<std::string> out;
  for (const Finding& finding : findings)
    if (finding.verdict == Verdict::fail) out.push_back(warning(finding));
  return out;
}

bool beam(PartKind kind) { return kind == PartKind::beam || kind == PartKind::bearer; }

}  // namespace

TitleBlock title_block(const SheetSet& set, int sheet, std::string drawing, std::string detail) {
  return {set.plan.title, std::move(drawing), std::move(detail), {}, set.plan.date, set.plan.number,
          sheet,          set.sheets};
}

std::vector<NamedDrawing> sheets(const ExportInput& input) {
  SheetSet set{input.plan, input.job.outputs.paper, warnings(input.findings), 1};
  for (const Part& part : input.plan.parts) set.sheets += beam(part.kind()) || former(part.kind()) ? 1 : 0;
  std::vector<NamedDrawing> out;
  if (input.plan.seated) ++set.sheets;
  out.push_back({"press", press_sheet(set, 1)});
  if (input.plan.seated) out.push_back({"seating", seating_sheet(set, 2)});
  for (std::size_t i = 0; i < input.plan.parts.size(); ++i) {
    const Part& part = input.plan.parts[i];
    const int sheet = static_cast<int>(out.size()) + 1;
    if (beam(part.kind()))
      out.push_back({part.name(), beam_sheet(set, sheet, i)});
    else if (former(part.kind()))
      out.push_back({part.name(), former_sheet(set, sheet, i)});
  }
  return out;
}

}  // namespace lamwright::drawing
