#include "exporters/drawing/press_tables.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

std::string point_text(const Vec2& p) { return number(p.x(), 2) + " / " + number(p.y(), 2); }

Table over_pack(const Closure& closure) {
  Table table{{{"strap", 24, Anchor::left},
               {"leaves X / Y", 44},
               {"mark X / Y", 44},
               {"run", 24},
               {"exit", 20},
               {"tension N", 24}},
              {},
              5};
  const auto row = [&](const char* name, const StrapEnd& end) {
    table.rows.push_back({name, point_text(end.leaves), point_text(end.mark), number(end.run, 2),
                          angle_text(end.exit), number(closure.tension, 0)});
  };
  row("left", closure.left);
  row("right", closure.right);
  return table;
}

// Heights at the middle of the strap; the tension of one leg.
Table loops(const Closure& closure) {
  const Loop& loop = *closure.loop;
  Table table{{{loop.pinned ? "pin to pin" : "strap loop", 24, Anchor::left},
               {"X", 24},
               {"top Y", 24},
               {"bottom Y", 24},
               {"length shut", 30},
               {"length open", 30},
               {"tension N", 24}},
              {},
              5};
  const auto row = [&](const char* name, const StrapEnd& end) {
    table.rows.push_back({name, number(end.leaves.x(), 2), number(end.leaves.y(), 2), number(end.mark.y(), 2),
                          number(loop.length, 1), number(loop.open_length, 1), number(closure.tension, 0)});
  };
  row("left", closure.left);
  row("right", closure.right);
  return table;
}

// "0 to 45°", or one figure where both are written alike.
std::string range(const std::string& least, const std::string& greatest) {
  return least == greatest ? least : least + " to " + greatest;
}

}  // namespace

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

Table strap_table(const Closure& closure) { return closure.loop ? loops(closure) : over_pack(closure); }

Table run_table(const PressPlan& plan) {
  Table table{{{"run", 20, Anchor::left}, {"angle to pull", 31}, {"pressure share", 37}}, {}, 5};
  if (!plan.pull) return table;
  for (std::size_t i = 0; i < plan.pull->runs.size(); ++i) {
    const RunPull& run = plan.pull->runs[i];
    table.rows.push_back({run_name(plan.neutral, i),
                          range(angle_text(run.least()), angle_text(run.greatest())),
                          range(number(run.least_share(), 3), number(run.greatest_share(), 3))});
  }
  return table;
}

Table folded_runs(const PressPlan& plan) {
  constexpr std::size_t kShort = 3, kHigh = 12, kColumns = 2;
  const Table table = run_table(plan);
  return folded(table, std::clamp((table.rows.size() + 1) / kColumns, kShort, kHigh), kColumns);
}

}  // namespace lamwright::drawing
