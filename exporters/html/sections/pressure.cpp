#include "exporters/html/image.hpp"
#include "exporters/html/sections/section.hpp"
#include "exporters/html/table.hpp"
#include "exporters/plots/pressure_map_plot.hpp"
#include "exporters/plots/pressure_plot.hpp"

namespace lamwright::html {

Section pressure_section(const PageInput& page) {
  const Told& told = page.told;
  Section section{"pressure", "Pressure", {}};
  const auto map = plots::pressure_map_plot(page.input, told.reported());
  if (!map) {
    section.body = element("p", "No pressure is known for this plan: see the checks.");
    return section;
  }
  section.body = words(
      facts({{"Finished panel", words(told.pressure("/pressure/finished/least"), " to ",
                                      told.pressure("/pressure/finished/greatest"))},
             {"Mean over the blank", told.pressure("/pressure/mean")},
             {"The glue wants",
              words(told.pressure("/pressure/required"), " to ", told.pressure("/pressure/most"))},
             {"Least at", words(told.length("/pressure/finished/least_girth"), " of girth, ",
                                told.length("/pressure/finished/least_width"), " from the near edge")}}),
      element("h3", "Over girth and width"), plot_image(*map, "Map of the pressure on the outer face"));
  if (const auto plot = plots::pressure_plot(page.input, told.reported()))
    section.body += words(element("h3", "Along the girth"),
                          plot_image(*plot, "Pressure along the girth with the glue's range"));
  return section;
}

}  // namespace lamwright::html
