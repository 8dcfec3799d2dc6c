#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/end_view.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/section_view.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table.hpp"
#include "exporters/drawing/text.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 4;  // between blocks of the sheet

std::string point_text(const Vec2& p) { return number(p.x(), 2) + " / " + number(p.y(), 2); }

Table strap_table(const PressPlan& plan, double z) {
  Table table{{{"strap", 24, Anchor::left},
               {"leaves X / Y", 44},
               {"mark X / Y", 44},
               {"run", 24},
               {"exit", 20},
               {"tension N", 24}},
              {},
              5};
  const Closure* closure = closure_at(plan, z);
  if (!closure) return table;
  const auto row = [&](const char* name, const StrapEnd& end) {
    table.rows.push_back({name, point_text(end.leaves), point_text(end.mark), number(end.run, 2),
                          angle_text(end.exit), number(closure->tension, 0)});
  };
  row("left", closure->left);
  row("right", closure->right);
  return table;
}

Table girth_table(const PressPlan& plan) {
  Table table{{{"blank", 24, Anchor::left},
               {"girth inner", 32},
               {"girth neutral", 32},
               {"girth outer", 32},
               {"chord", 30},
               {"thickness", 30}},
              {},
              5};
  const Panel& panel = plan.panel;
  const double inner = offset(plan.neutral, -panel.neutral_height).girth();
  const double outer = offset(plan.neutral, panel.thickness - panel.neutral_height).girth();
  table.rows.push_back({"as pressed", number(inner, 2), number(plan.neutral.girth(), 2), number(outer, 2),
                        number(chord(plan.neutral), 2), number(panel.thickness, 2)});
  return table;
}

struct Content {
  Box2 section;
  Box2 end;
  std::vector<Table> tables;
  std::size_t warnings;

  double tables_height() const {
    double height = 0;
    for (const Table& table : tables) height += table_size(table).y() + kGap / 2;
    return height;
  }
  // Height of the strip along the bottom that title block and tables share.
  double strip() const { return std::max(kTitleBlockHeight, tables_height() + kGap / 2) + kGap; }
};

// The end view beside or below the section, at the sheet's scale or the next smaller one.
enum Arrangement { kBeside, kBelow, kBesideReduced, kBelowReduced, kArrangements };
bool is_beside(const Choice& choice) {
  return choice.arrangement == kBeside || choice.arrangement == kBesideReduced;
}
bool is_reduced(const Choice& choice) { return choice.arrangement >= kBesideReduced; }
Scale end_scale(const Choice& choice) { return is_reduced(choice) ? reduced(choice.scale) : choice.scale; }

// Lower left corners of the two views' rooms and the upper left one of the tables.
struct Places {
  Vec2 section{0, 0};
  Vec2 end{0, 0};
  Vec2 tables{0, 0};
  bool fits = false;
};

Places beside(const Content& content, const Box2& field, const Vec2& section, const Vec2& end) {
  const double wide = field.size().x() - section.x() - end.x();
  const double high = field.size().y() - content.strip() - std::max(section.y(), end.y());
  const double y = field.low.y() + content.strip() + std::max(0.0, high) / 2;
  const double gap = std::max(0.0, wide) / 3;
  const bool narrow = field.size().x() < 2 * kTitleWidth + kGap;  // tables do not fit beside the title block
  return {{field.low.x() + gap, y},
          {field.low.x() + 2 * gap + section.x(), y},
          {field.low.x() + kGap, field.low.y() + content.tables_height() + kGap / 2},
          wide >= 0 && high >= 0 && !narrow};
}

Places below(const Content& content, const Box2& field, const Vec2& section, const Vec2& end) {
  const double high = field.size().y() - section.y() - end.y();
  const double free = field.size().x() - section.x();
  const double beside_title = field.size().x() - kTitleWidth - kGap - end.x();
  const double right_column = kTitleBlockHeight + kGap + content.tables_height();
  const double gap = std::max(0.0, high) / 3;
  return {{field.low.x() + std::max(0.0, free) / 2, field.high.y() - gap - section.y()},
          {field.low.x() + std::max(0.0, beside_title) / 2, field.low.y() + gap},
          {field.high.x() - kTitleWidth, field.low.y() + right_column},
          high >= 0 && free >= 0 && beside_title >= 0 && right_column <= end.y() + gap};
}

Places places(const Content& content, const Choice& choice) {
  const Box2 field = drawing_field(choice.paper, content.warnings);
  const Vec2 section = room_of(content.section, choice.scale.factor, section_margins());
  const Vec2 end = room_of(content.end, end_scale(choice).factor, end_margins());
  return is_beside(choice) ? beside(content, field, section, end) : below(content, field, section, end);
}

void add_tables(Drawing& drawing, const std::vector<Table>& tables, Vec2 corner) {
  for (const Table& table : tables) {
    add_table(drawing, table, corner);
    corner.y() -= table_size(table).y() + kGap / 2;
  }
}

}  // namespace

Drawing press_sheet(const SheetSet& set, int sheet) {
  const PressPlan& plan = set.plan;
  const double z = section_station(plan);
  Content content{section_box(plan, z), end_box(plan), {girth_table(plan)}, set.warnings.size()};
  if (closure_at(plan, z)) content.tables.push_back(strap_table(plan, z));
  const Choice choice =
      choose(papers_from(set.paper), kArrangements, [&](const Choice& c) { return places(content, c).fits; });
  const Places at = places(content, choice);
  TitleBlock block =
      title_block(set, sheet, "press, section at a former",
                  plan.method + ", " + counted(static_cast<long>(plan.sections.size()), "former"));
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_tables(drawing, content.tables, at.tables);
  const double scale = choice.scale.factor;
  const View section = view_in(content.section, scale, section_margins(), at.section);
  add_section(drawing, plan, z, section);
  const Scale side = end_scale(choice);
  View end = view_in(content.end, side.factor, end_margins(), at.end);
  if (is_beside(choice)) end.origin.y() = section.origin.y();  // first angle: the views are in line
  const Box2 field = grown(drawing_field(choice.paper, set.warnings.size()), -kGap / 2);
  add_end_view(drawing, plan, end, field, is_reduced(choice) ? side.text : std::string{});
  add_section_dimensions(drawing, plan, z, section, field);
  return drawing;
}

}  // namespace lamwright::drawing
