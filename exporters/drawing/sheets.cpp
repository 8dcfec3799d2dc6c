#include "exporters/drawing/sheets.hpp"

#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/pressure_sheet.hpp"
#include "exporters/drawing/springback_sheet.hpp"
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
  const auto& pressure = input.figures.pressure;
  const bool springback = springs_back(input.plan.panel);
  set.sheets += (input.plan.seated ? 1 : 0) + (pressure ? 1 : 0) + (springback ? 1 : 0);
  std::vector<NamedDrawing> out;
  const auto next = [&] { return static_cast<int>(out.size()) + 1; };
  out.push_back({"press", press_sheet(set, next())});
  if (input.plan.seated) out.push_back({"seating", seating_sheet(set, next())});
  if (pressure) out.push_back({"pressure", pressure_sheet(set, next(), *pressure, input.job.layup.glue_row)});
  if (springback)
    out.push_back({"springback", springback_sheet(set, next(), input.job.press.springback.kind)});
  for (std::size_t i = 0; i < input.plan.parts.size(); ++i) {
    const Part& part = input.plan.parts[i];
    const int sheet = next();
    if (beam(part.kind()))
      out.push_back({part.name(), beam_sheet(set, sheet, i)});
    else if (former(part.kind()))
      out.push_back({part.name(), former_sheet(set, sheet, i)});
  }
  return out;
}

}  // namespace lamwright::drawing
