#include "exporters/html/sections/section.hpp"
#include "exporters/html/table.hpp"

namespace lamwright::html {
namespace {

std::string at(const char* list, std::size_t i) { return list + ("/" + std::to_string(i)); }

// The closure at a station, for there may be fewer of them than formers.
std::optional<std::size_t> closure_at(const Told& told, const Json& station) {
  for (std::size_t i = 0; i < told.size("/press/closures"); ++i)
    if (told.at(at("/press/closures", i) + "/at") == station) return i;
  return std::nullopt;
}

bool strapped(const Told& told) { return told.size("/press/closures") > 0; }

Markup pulled_by(const Told& told, const std::string& closure) {
  const char* by = "strap, ";
  if (told.has("/press/loops"))
    by =
        told.text("/press/loops/anchor") == "pin" ? "a strap from pin to pin at each end, " : "two loops of ";
  return words(by, told.text(closure + "/hardware"));
}

// Without straps all stations are alike.
Markup bare_stations(const Told& told) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size("/press/stations"); ++i)
    rows.push_back({std::to_string(i + 1), told.length(at("/press/stations", i))});
  return table({{"station", true}, {"from the near edge", true}}, rows);
}

Markup strapped_stations(const Told& told) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size("/press/stations"); ++i) {
    const std::string station = at("/press/stations", i);
    std::vector<Markup> row{std::to_string(i + 1), told.length(station), "no strap", {}, {}};
    if (const auto closure = closure_at(told, told.at(station))) {
      const std::string one = at("/press/closures", *closure);
      row[2] = pulled_by(told, one);
      row[3] = told.force(one + "/tension");
      if (!told.has("/press/loops") && told.at(one + "/staggered").get<bool>())
        row[4] = "ratchets higher and lower by turns";
    }
    rows.push_back(std::move(row));
  }
  return table(
      {{"station", true}, {"from the near edge", true}, {"pulled by"}, {"tension at each ratchet", true}, {}},
      rows);
}

Markup stations_table(const Told& told) {
  const Markup where = element(
      "p", "Station 1 stands at the near edge. Seen with L on the left, the near edge is at the back.");
  return words(where, strapped(told) ? strapped_stations(told) : bare_stations(told));
}

Markup place(const Told& told, const std::string& point) {
  return words(told.length(point + "/0"), ", ", told.length(point + "/1"));
}

Markup stroke(const Told& told) {
  const Markup up = told.length("/press/opening/1");
  if (told.at("/press/opening/0").get<double>() == 0) return words("straight up ", up);
  return words(told.length("/press/opening/0"), " to the right and ", up, " up");
}

Markup ends_table(const Told& told) {
  if (told.size("/press/straps") == 0) return {};
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size("/press/straps"); ++i) {
    const std::string end = at("/press/straps", i);
    rows.push_back({i == 0 ? "left" : "right", place(told, end + "/leaves"), place(told, end + "/mark"),
                    told.length(end + "/run"), told.degrees(end + "/exit_deg")});
  }
  const bool loops = told.has("/press/loops");
  return words(element("h3", loops ? "Where the loops stand" : "Where straps leave and hook"),
               element("p", "X to the right of the middle of the chord, Y up from the formers' foot."),
               table({{"end"},
                      {loops ? "upper beam, X, Y" : "leaves the caul at X, Y", true},
                      {loops ? "lower beam, X, Y" : "strap hole at X, Y", true},
                      {"free run", true},
                      {"turned down by", true}},
                     rows));
}

Markup flats_table(const Told& told) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size("/press/flats"); ++i) {
    const std::string flat = at("/press/flats", i);
    rows.push_back(
        {std::to_string(i + 1), words(told.length(flat + "/girth/0"), " to ", told.length(flat + "/girth/1")),
         told.count(flat + "/beams"), told.entries(flat + "/clamps"), told.force(flat + "/force")});
  }
  if (rows.empty()) return {};
  return words(element("h3", "Clamps on the flats"), table({{"flat", true},
                                                            {"girth", true},
                                                            {"pressing beams", true},
                                                            {"clamps on each", true},
                                                            {"force of each", true}},
                                                           rows));
}

Markup pull_facts(const Told& told) {
  if (!told.has("/press/pull")) return {};
  std::vector<Fact> all{{"Pull", told.text("/press/pull/name")},
                        {"Axis from the chord's normal", told.degrees("/press/pull/axis_deg")}};
  if (told.has("/press/loops"))
    all.push_back({"A loop, shut and open",
                   words(told.length("/press/loops/length"), ", ", told.length("/press/loops/open_length"))});
  if (told.has("/press/seating/stray"))
    all.push_back({"The pull line may stray", words(told.length("/press/seating/stray/0"), " left, ",
                                                    told.length("/press/seating/stray/1"), " right")});
  if (told.has("/press/opening")) all.push_back({"Opening stroke", stroke(told)});
  return facts(all);
}

Markup method(const Told& told) {
  return words(
      element("p", words(element("b", words(told.text("/press/method"), " press.")), " ",
                         told.text("/press/reason"))),
      element("p", words("Formers stand ", told.length("/press/spacing/pitch"), " from middle to middle, ",
                         told.length("/press/spacing/clear"), " clear between them.")));
}

}  // namespace

Section closing_section(const PageInput& page) {
  const Told& told = page.told;
  return {"closing", strapped(told) ? "Straps and clamps" : "Stations and clamps",
          words(method(told), pull_facts(told), stations_table(told), ends_table(told), flats_table(told))};
}

}  // namespace lamwright::html
