#include "exporters/drawing/sheets.hpp"

#include <functional>

#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/pressure_sheet.hpp"
#include "exporters/drawing/springback_sheet.hpp"
#include "kernel/supply/pack_sheets.hpp"
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

// As the lists have it; an exporter that is given none makes the same of the job, so that both draw the same.
std::vector<PackSheet> pack_of(const ExportInput& input) {
  if (!input.supply.pack.empty()) return input.supply.pack;
  if (input.job.layup.plies.size() != input.plan.panel.plies.size()) return {};
  return pack_sheets(input.job, input.plan);
}

// A sheet still to be drawn: how many there are must be known before the first.
struct Planned {
  std::string name;
  std::function<Drawing(const SheetSet&, int)> draw;
};

void plan_press(std::vector<Planned>& out, const ExportInput& input) {
  const auto& pressure = input.figures.pressure;
  out.push_back({"press", press_sheet});
  out.push_back({"stations", stations_sheet});
  if (input.plan.seated) out.push_back({"seating", seating_sheet});
  if (pressure)
    out.push_back({"pressure", [&](const SheetSet& set, int sheet) {
                     return pressure_sheet(set, sheet, *pressure, input.job.layup.glue_row);
                   }});
  if (springs_back(input.plan.panel))
    out.push_back({"springback", [&](const SheetSet& set, int sheet) {
                     return springback_sheet(set, sheet, input.job.press.springback.kind);
                   }});
}

// A bearer with a groove is drawn as a section, which bores never are.
bool drilled(const Part& part) {
  return part.kind() == PartKind::beam || (part.kind() == PartKind::bearer && !part.bores().empty());
}
// The panel is drawn as its blanks.
bool block(const Part& part) {
  const PartKind kind = part.kind();
  return kind == PartKind::bearer || kind == PartKind::spacer_block || kind == PartKind::fixing_block ||
         kind == PartKind::pressing_beam || kind == PartKind::stop;
}

void plan_parts(std::vector<Planned>& out, const SheetSet& set) {
  const auto add = [&](const std::string& name, Drawing (*draw)(const SheetSet&, int, std::size_t),
                       std::size_t index) {
    out.push_back({name, [=](const SheetSet& all, int sheet) { return draw(all, sheet, index); }});
  };
  for (std::size_t i = 0; i < set.plan.parts.size(); ++i) {
    const Part& part = set.plan.parts[i];
    if (drilled(part)) {
      add(part.name(), beam_sheet, i);
    } else if (former(part.kind())) {
      add(part.name(), former_sheet, i);
      if (contact_edge_apart(set, i)) add(part.name() + "-edge", contact_edge_sheet, i);
    } else if (block(part)) {
      add(part.name(), block_sheet, i);
    }
  }
  for (std::size_t i = 0; i < set.plan.cauls.size(); ++i) add(to_text(set.plan.cauls[i].kind), caul_sheet, i);
  out.push_back({"blanks", blanks_sheet});
  for (std::size_t i = 0; i < set.plan.aids.size(); ++i) add(set.plan.aids[i].part.name(), aid_sheet, i);
}

}  // namespace

TitleBlock title_block(const SheetSet& set, int sheet, std::string drawing, std::string detail) {
  return {set.plan.title, std::move(drawing), std::move(detail), {}, set.plan.date, set.plan.number,
          sheet,          set.sheets};
}

SharedDrawings sheets(const ExportInput& input) {
  return sheets(input, [](const std::string&) { return true; });
}

SharedDrawings sheets(const ExportInput& input, const std::function<bool(const std::string&)>& wanted) {
  SheetSet set{input.plan, input.job.outputs.paper, warnings(input.findings), 1, pack_of(input)};
  std::vector<Planned> planned;
  plan_press(planned, input);
  plan_parts(planned, set);
  set.sheets = static_cast<int>(planned.size());
  SharedDrawings out;
  for (std::size_t i = 0; i < planned.size(); ++i)
    if (wanted(planned[i].name))
      out.push_back(made_once(input.shared, "drawing: " + planned[i].name, [&] {
        return NamedDrawing{planned[i].name, planned[i].draw(set, static_cast<int>(i) + 1)};
      }));
  return out;
}

}  // namespace lamwright::drawing
