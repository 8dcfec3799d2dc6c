#include "exporters/html/sections/section.hpp"
#include "exporters/html/table.hpp"

namespace lamwright::html {
namespace {

Markup pack_table(const Told& told) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size("/pack"); ++i) {
    const std::string sheet = "/pack/" + std::to_string(i);
    rows.push_back({told.text(sheet + "/use"), told.text(sheet + "/stock"), told.length(sheet + "/thickness"),
                    told.has(sheet + "/grain_deg") ? told.grain(sheet + "/grain_deg") : Markup(),
                    words(told.length(sheet + "/cut"), " × ", told.length(sheet + "/width")),
                    told.count(sheet + "/one_panel"), told.count(sheet + "/all_panels")});
  }
  return table({{"sheet"},
                {"of"},
                {"thick", true},
                {"grain"},
                {"cut, girth × width", true},
                {"one panel", true},
                {"all", true}},
               rows);
}

Markup faces_text(const Told& told) {
  return told.at("/glue/faces").get<int>() == 2 ? "both faces of every line" : "one face of every line";
}

// More hands spreading at once need fewer stages, so fewer pressings.
Markup in_stages(const Told& told) {
  if (told.size("/glue/stages") < 2) return {};
  return words(", glued by one person in ", told.entries("/glue/stages"), " stages");
}

Markup glue_facts(const Told& told) {
  std::vector<Fact> all{
      {"Glue", told.text("/glue/name")},
      {"Wants", words(told.pressure("/glue/pressure/0"), " to ", told.pressure("/glue/pressure/1"))},
      {"Spread", words(told.quantity("/glue/spread", "g/m2"), ", ", faces_text(told))},
      {"Lines", told.count("/glue/lines")}};
  if (told.has("/glue/mass"))
    all.push_back(
        {"Glue", words(told.mass("/glue/mass"), " a panel, ", told.mass("/glue/total_mass"), " in all")});
  if (told.has("/glue/minutes")) {
    all.push_back({"Spreading", words(told.minutes("/glue/minutes/spreading"), " for one person; open time ",
                                      told.minutes("/glue/minutes/open"))});
    all.push_back({"Laying and closing", words(told.minutes("/glue/minutes/setting"), "; closed time ",
                                               told.minutes("/glue/minutes/closed"))});
    all.push_back({"Under pressure", told.minutes("/glue/minutes/pressing")});
    all.push_back({"Cure before machining", told.hours("/glue/cure_hours")});
    all.push_back(
        {"Pressings", words(told.count("/glue/pressings"), " in ", told.count("/glue/days"),
                            told.at("/glue/days").get<int>() == 1 ? " day" : " days", in_stages(told))});
  }
  return facts(all);
}

}  // namespace

Section layup_section(const PageInput& page) {
  const Told& told = page.told;
  return {
      "layup", "Lay-up and glue",
      words(element(
                "p",
                "From the inner face outward. Grain along runs round the bend, across runs with the width."),
            pack_table(told), glue_facts(told))};
}

}  // namespace lamwright::html
