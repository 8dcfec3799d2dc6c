#include "exporters/drawing/springback_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/springback_view.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 3.5;                            // between blocks of the sheet
constexpr double kRow = 5;                              // of text
constexpr double kDetailRoom = 2 * kDetailRadius + 12;  // with its dimension

struct Words {
  std::vector<std::string> lines;
  double height() const { return kRow * static_cast<double>(lines.size()); }
};

std::string told(SpringbackSpec::Kind kind) {
  switch (kind) {
    case SpringbackSpec::Kind::test_piece:
      return "The share was measured on a test piece.";
    case SpringbackSpec::Kind::notebook:
      return "The share is fitted to test pieces of this lay-up that the workshop pressed and measured.";
    case SpringbackSpec::Kind::share:
      return "The share is taken as the job gives it; a test piece of this lay-up tells how good it is.";
    case SpringbackSpec::Kind::none:
    case SpringbackSpec::Kind::computed:
      break;
  }
  return "The share is an estimate: press a test piece of this lay-up, measure its radius and give it in the "
         "job.";
}

std::string lost_text(const Springback& lost) {
  return "Share of the pressed curvature " + std::string(lost.share > 0 ? "lost" : "gained") +
         " on release: " + number(100 * std::abs(lost.share), 2) + " % (" + lost.source + ").";
}

// "3.3 apart at both ends"
std::string apart_text(const LaidOver& lines) {
  const double left = lines.left().distance(), right = lines.right().distance();
  const Moved& most = lines.farthest();
  const std::string apart = number(most.distance(), 2) + " apart at ";
  if (most.distance() > lines.widest_end().distance()) return apart + "girth " + size_text(most.station);
  if (std::abs(left - right) < kSamePoint) return apart + "both ends";
  return apart + (lines.left_moves_more() ? "the left end" : "the right end");
}

Words words(const PressPlan& plan, const LaidOver& lines, SpringbackSpec::Kind kind) {
  return {{lost_text(plan.panel.springback), told(kind),
           "Both lines are true to scale, without trim, laid on one another at the middle of the girth; they "
           "lie " +
               apart_text(lines) + "."}};
}

std::string run_shape(const Run& run) {
  if (run.straight()) return number(run.length, 2) + " long";
  return size_text(1 / std::abs(run.curvature)) + " / " + number(degrees(run.turn()), 2) + "°";
}

TableBlock tables_of(const LaidOver& lines) {
  constexpr std::size_t kHigh = 12, kColumns = 2;
  return {{folded(released_runs_table(lines), kHigh, kColumns)}, {shape_table(lines), apart_table(lines)}};
}

struct SpringbackPlaces {
  Vec2 corner{0, 0};  // lower left of the view's room
  Vec2 detail{0, 0};  // middle of the detail's circle
  Vec2 words{0, 0};   // upper left
  Vec2 tables{0, 0};  // upper left
  double tables_width = 0;
  bool fits = false;
};

SpringbackPlaces places(const LaidOver& lines, const TableBlock& tables, const Words& text,
                        const Choice& choice, std::size_t warnings) {
  const Box2 field = drawing_field(choice.paper, warnings);
  const double tables_width = field.size().x() - kTitleWidth - 2 * kGap;
  const Vec2 listed = tables.size(tables_width);
  const double strip = std::max(kTitleBlockHeight, listed.y() + kTableGap) + kGap;
  const double legend = 2 * kRow;
  const double below = strip + text.height() + legend + kGap;
  const Vec2 room = room_of(lines.box(), choice.scale.factor, springback_margins());
  const auto detail = detail_for(lines, choice.scale.factor);
  const Vec2 beside = detail ? Vec2(kDetailRoom, kDetailRoom) : Vec2(0, 0);
  const Vec2 used{room.x() + beside.x(), std::max(room.y(), beside.y())};
  const Vec2 spare = field.size() - used - Vec2(2 * kGap, below);
  const Vec2 low =
      field.low + Vec2(kGap + std::max(0.0, spare.x()) / 2, below + std::max(0.0, spare.y()) / 2);
  const double middle = low.y() + used.y() / 2;
  return {{low.x(), middle - room.y() / 2},
          {low.x() + room.x() + kDetailRoom / 2, middle - kTitleHeight / 2},
          field.low + Vec2(kGap, strip + text.height() + legend),
          field.low + Vec2(kGap, kGap / 2 + listed.y()),
          tables_width,
          spare.x() >= 0 && spare.y() >= 0 && listed.x() <= tables_width};
}

void add_words(Drawing& drawing, const PressPlan& plan, const Words& text, const Vec2& corner, double width) {
  constexpr double kSample = 14;
  const std::string face = to_text(plan.panel.face) + (plan.panel.face == Face::centre ? " line" : " face");
  double y = corner.y();
  const auto legend = [&](const char* pen, const std::string& name) {
    y -= kRow;
    drawing.add(pen, line({corner.x(), y + kSmallHeight / 2}, {corner.x() + kSample, y + kSmallHeight / 2}));
    drawing.add(pens::kText, Text{{corner.x() + kSample + 2, y}, name});
  };
  legend(pens::kPart, face + " as pressed");
  legend(pens::kMark, face + " as released");
  for (const std::string& row : text.lines) {
    y -= kRow;
    drawing.add(pens::kText, fitted({corner.x(), y}, row, width, {kSmallHeight, kLabelHeight}));
  }
}

}  // namespace

bool springs_back(const Panel& panel) {
  return std::abs(panel.springback.share) > kWholeNumber && !panel.released.straight();
}

Table released_runs_table(const LaidOver& lines) {
  Table table{{{"R / turn", 18, Anchor::left}, {"released", 36}, {"pressed", 36}}, {}, 5};
  const auto& released = lines.released().runs();
  const auto& pressed = lines.pressed().runs();
  for (std::size_t i = 0; i < std::min(released.size(), pressed.size()); ++i)
    table.rows.push_back({run_name(lines.released(), i), run_shape(released[i]), run_shape(pressed[i])});
  return table;
}

Table shape_table(const LaidOver& lines) {
  Table table{{{"face", 20, Anchor::left}, {"chord", 20}, {"rise", 20}, {"turn", 20}}, {}, 5};
  const auto row = [&](const char* name, const Profile& line) {
    table.rows.push_back(
        {name, number(chord(line), 2), number(rise(line), 2), number(degrees(line.turn()), 2) + "°"});
  };
  row("released", lines.released());
  row("pressed", lines.pressed());
  return table;
}

Table apart_table(const LaidOver& lines) {
  return {{{"apart at", 20, Anchor::left}, {"left end", 20}, {"right end", 20}, {"most", 20}},
          {{"distance", number(lines.left().distance(), 2), number(lines.right().distance(), 2),
            number(lines.farthest().distance(), 2)}},
          5};
}

Drawing springback_sheet(const SheetSet& set, int sheet, SpringbackSpec::Kind kind) {
  const PressPlan& plan = set.plan;
  const LaidOver lines(plan.panel);
  const TableBlock tables = tables_of(lines);
  const Words text = words(plan, lines, kind);
  const auto at = [&](const Choice& choice) {
    return places(lines, tables, text, choice, set.warnings.size());
  };
  const Choice choice = choose(papers_from(set.paper), 1, [&](const Choice& c) { return at(c).fits; });
  const SpringbackPlaces place = at(choice);
  TitleBlock block =
      title_block(set, sheet, "released over pressed", "described face of the panel, without trim");
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_tables(drawing, tables, place.tables_width, place.tables);
  const View view = view_in(lines.box(), choice.scale.factor, springback_margins(), place.corner);
  add_laid_over(drawing, lines, view);
  if (const auto detail = detail_for(lines, choice.scale.factor))
    add_detail(drawing, lines, view, *detail, place.detail);
  add_words(drawing, plan, text, place.words, drawing_field(choice.paper).size().x() - 2 * kGap);
  return drawing;
}

}  // namespace lamwright::drawing
