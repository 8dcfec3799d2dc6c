#include <algorithm>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/end_view.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/press_tables.hpp"
#include "exporters/drawing/section_view.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table_block.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 4;  // between blocks of the sheet

// The end view beside or below the section, at the sheet's scale or the next smaller one.
enum Arrangement { kBeside, kBelow, kBesideReduced, kBelowReduced, kArrangements };
bool is_beside(const Choice& choice) {
  return choice.arrangement == kBeside || choice.arrangement == kBesideReduced;
}
bool is_reduced(const Choice& choice) { return choice.arrangement >= kBesideReduced; }
Scale end_scale(const Choice& choice) { return is_reduced(choice) ? reduced(choice.scale) : choice.scale; }

struct Content {
  const PressPlan& plan;
  Box2 section;
  Box2 end;
  TableBlock tables;
  std::size_t warnings;

  Margins end_margins(const Choice& choice) const {
    return drawing::end_margins(plan, end_scale(choice), is_reduced(choice));
  }
  // Height of the strip along the bottom that title block and tables share.
  double strip(double width) const {
    return std::max(kTitleBlockHeight, tables.size(width).y() + kGap / 2) + kGap;
  }
};

Content content_of(const PressPlan& plan, double z, std::size_t warnings) {
  Content content{plan, section_box(plan, z), end_box(plan), {{girth_table(plan)}, {}}, warnings};
  if (const Closure* closure = closure_at(plan, z)) content.tables.first.push_back(strap_table(*closure));
  if (plan.pull) content.tables.second.push_back(folded_runs(plan));
  return content;
}

// Lower left corners of the two views' rooms and the upper left one of the tables.
struct Places {
  Vec2 section{0, 0};
  Vec2 end{0, 0};
  Vec2 tables{0, 0};
  double tables_width = 0;  // that they may take
  bool fits = false;
};

Places beside(const Content& content, const Box2& field, const Vec2& section, const Vec2& end) {
  const double wide = field.size().x() - section.x() - end.x();
  const double beside_title = field.size().x() - kTitleWidth - 2 * kGap;
  const double strip = content.strip(beside_title);
  const double high = field.size().y() - strip - std::max(section.y(), end.y());
  const double y = field.low.y() + strip + std::max(0.0, high) / 2;
  const double gap = std::max(0.0, wide) / 3;
  const bool narrow = field.size().x() < 2 * kTitleWidth + kGap;  // tables do not fit beside the title block
  return {{field.low.x() + gap, y},
          {field.low.x() + 2 * gap + section.x(), y},
          {field.low.x() + kGap, field.low.y() + content.tables.size(beside_title).y() + kGap / 2},
          beside_title,
          wide >= 0 && high >= 0 && !narrow};
}

Places below(const Content& content, const Box2& field, const Vec2& section, const Vec2& end) {
  const double high = field.size().y() - section.y() - end.y();
  const double free = field.size().x() - section.x();
  const double beside_title = field.size().x() - kTitleWidth - kGap - end.x();
  const double right_column = kTitleBlockHeight + kGap + content.tables.size(kTitleWidth).y();
  const double gap = std::max(0.0, high) / 3;
  return {{field.low.x() + std::max(0.0, free) / 2, field.high.y() - gap - section.y()},
          {field.low.x() + std::max(0.0, beside_title) / 2, field.low.y() + gap},
          {field.high.x() - kTitleWidth, field.low.y() + right_column},
          kTitleWidth,
          high >= 0 && free >= 0 && beside_title >= 0 && right_column <= end.y() + gap};
}

Places places(const Content& content, const Choice& choice) {
  const Box2 field = drawing_field(choice.paper, content.warnings);
  const Vec2 section = room_of(content.section, choice.scale.factor, section_margins(content.plan));
  const Vec2 end = room_of(content.end, end_scale(choice).factor, content.end_margins(choice));
  return is_beside(choice) ? beside(content, field, section, end) : below(content, field, section, end);
}

// The field without the strip of tables and title block, where views stand side by side.
Box2 above(const Box2& field, const Content& content, const Choice& choice) {
  if (!is_beside(choice)) return field;
  const double width = drawing_field(choice.paper).size().x() - kTitleWidth - 2 * kGap;
  return {field.low + Vec2(0, content.strip(width)), field.high};
}

std::string detail(const PressPlan& plan) {
  return plan.method + ", " +
         counted(static_cast<long>(plan.sections.size()), two_moulds(plan) ? "former pair" : "former");
}

}  // namespace

Drawing press_sheet(const SheetSet& set, int sheet) {
  const PressPlan& plan = set.plan;
  const double z = section_station(plan);
  const Content content = content_of(plan, z, set.warnings.size());
  const Choice choice =
      choose(papers_from(set.paper), kArrangements, [&](const Choice& c) { return places(content, c).fits; });
  const Places at = places(content, choice);
  TitleBlock block = title_block(set, sheet, "press, section at a former", detail(plan));
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_tables(drawing, content.tables, at.tables_width, at.tables);
  const double scale = choice.scale.factor;
  const View section = view_in(content.section, scale, section_margins(plan), at.section);
  add_section(drawing, plan, z, section);
  const Scale side = end_scale(choice);
  View end = view_in(content.end, side.factor, content.end_margins(choice), at.end);
  if (is_beside(choice)) end.origin.y() = section.origin.y();  // first angle: the views are in line
  const Box2 field = grown(drawing_field(choice.paper, set.warnings.size()), -kGap / 2);
  add_end_view(drawing, plan, end, field, is_reduced(choice) ? side.text : std::string{});
  add_section_dimensions(drawing, plan, z, section, two_moulds(plan) ? above(field, content, choice) : field);
  return drawing;
}

}  // namespace lamwright::drawing
