#include "exporters/drawing/seating_tables.hpp"

#include <algorithm>

#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {

Table pressure_table(const PressPlan& plan) {
  Table table{
      {{"pressure", 54, Anchor::left}, {"MPa", 42}, {"times an even one", 42}, {"at girth", 42}}, {}, 5};
  const Seated& seated = *plan.seated;
  const Seating& seating = seated.seating;
  const auto row = [&](const char* name, double value, const std::string& where) {
    table.rows.push_back({name, number(value, 4), number(value / seated.unit, 3), where});
  };
  std::string lifted;
  for (const Stretch& s : seating.lifted())
    lifted += (lifted.empty() ? "" : ", ") + size_text(s.from) + " to " + size_text(s.to);
  row("least", seating.least(), lifted.empty() ? size_text(seating.least_at()) : lifted);
  row("mean", seating.mean(), "-");
  row("greatest", seating.greatest(), size_text(seating.greatest_at()));
  return table;
}

Table pull_table(const PressPlan& plan) {
  Table table{{{"pull compared", 54, Anchor::left},
               {"axis", 22},
               {"position", 22},
               {"least", 27},
               {"mean", 27},
               {"greatest", 28}},
              {},
              5};
  if (!plan.pull) return table;
  for (const NamedPull& named : plan.pull->compared) {
    std::string name = (&named == &plan.pull->chosen() ? "chosen: " : "") + named.name;
    std::replace(name.begin(), name.end(), '-', ' ');
    const PullChoice& choice = named.choice;
    const bool holds = choice.mean > 0;
    const auto times = [&](double value) { return holds ? number(value, 3) : std::string("-"); };
    table.rows.push_back({name, angle_text(choice.axis), size_text(choice.at), times(choice.least),
                          times(choice.mean), times(choice.greatest)});
  }
  return table;
}

}  // namespace lamwright::drawing
