#include "exporters/pdf/template_book.hpp"

#include <algorithm>
#include <iterator>

#include "exporters/drawing/cutting.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/sheet.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/tiling.hpp"
#include "exporters/pdf/template_guide.hpp"

namespace lamwright {
namespace {

struct Template {
  const Part& part;
  std::size_t count;
};

std::vector<Template> templates(const PressPlan& plan) {
  std::vector<Template> out;
  for (std::size_t i = 0; i < plan.parts.size(); ++i)
    if (drawing::former(plan.parts[i].kind())) out.push_back({plan.parts[i], instances(plan, i)});
  for (const ShopAid& aid : plan.aids) out.push_back({aid.part, static_cast<std::size_t>(aid.count)});
  return out;
}

std::string job_note(const PressPlan& plan) {
  return plan.title.empty() ? plan.number : plan.title + ", " + plan.number;
}

GuideRow row_of(const Template& item, const drawing::Drawing& full_size, const drawing::TileGrid& grid) {
  const Vec2 size = full_size.size();
  std::string sheets = std::to_string(grid.rows) + " x " + std::to_string(grid.columns);
  if (const std::size_t out = grid.used.size() - grid.tiles().size(); out > 0)
    sheets += " less " + std::to_string(out);
  return {item.part.name(), drawing::size_text(size.x()) + " x " + drawing::size_text(size.y()),
          std::to_string(item.count), sheets, static_cast<int>(grid.tiles().size())};
}

}  // namespace

TemplateBook template_book(const Job& job, const PressPlan& plan) {
  const std::string& paper = job.outputs.paper;
  std::vector<GuideRow> rows;
  std::vector<drawing::Drawing> sheets;
  TemplateBook book;
  for (const Template& item : templates(plan)) {
    const drawing::CuttingDrawing full_size = drawing::cutting_drawing(item.part);
    book.missing.insert(book.missing.end(), full_size.missing.begin(), full_size.missing.end());
    rows.push_back(row_of(item, full_size.drawing, drawing::tile_grid(full_size.drawing, paper)));
    for (drawing::Drawing& page : drawing::tiled(full_size.drawing, {paper, job_note(plan)}))
      sheets.push_back(std::move(page));
  }
  if (sheets.empty()) return {};
  book.pages = template_guide({paper, job_note(plan), plan.date}, rows);
  std::move(sheets.begin(), sheets.end(), std::back_inserter(book.pages));
  return book;
}

}  // namespace lamwright
