#include "exporters/html/image.hpp"
#include "exporters/html/sections/section.hpp"
#include "exporters/html/table.hpp"
#include "exporters/plots/curvature_plot.hpp"
#include "exporters/plots/springback_plot.hpp"

namespace lamwright::html {
namespace {

Markup run_name(const Told& told, const std::string& run) {
  if (!told.has(run + "/radius")) return "straight";
  return told.at(run + "/turn").get<double>() > 0 ? "crown" : "hollow";
}

Markup runs_table(const Told& told, const std::string& runs) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size(runs); ++i) {
    const std::string run = runs + "/" + std::to_string(i);
    const bool bend = told.has(run + "/radius");
    rows.push_back({run_name(told, run), told.length(run + "/length"),
                    bend ? told.length(run + "/radius") : Markup(),
                    bend ? told.degrees(run + "/turn") : Markup()});
  }
  return table({{"run"}, {"length", true}, {"radius", true}, {"turn", true}}, rows);
}

Markup face_name(const Told& told) { return words(told.text("/panel/face"), " face"); }

Markup shapes(const Told& told) {
  const Markup released = words(element("h3", words("As released, finished: ", face_name(told))),
                                runs_table(told, "/panel/released/runs"));
  const Markup pressed = words(element("h3", words("As pressed, with trim: ", face_name(told))),
                               runs_table(told, "/panel/pressed/runs"));
  return element("div", words(element("div", released), element("div", pressed)), "class=\"beside\"");
}

Markup girths(const Told& told) {
  const Markup neutral = told.length("/panel/girth/neutral");
  if (!bends(told)) return neutral;
  return words(told.length("/panel/girth/inner"), " inside, ", neutral, " neutral line, ",
               told.length("/panel/girth/outer"), " outside");
}

Markup figures(const Told& told) {
  std::vector<Fact> all{
      {"Finished width", told.length("/panel/width")},    {"Thickness", told.length("/panel/thickness")},
      {"Trim on every edge", told.length("/panel/trim")}, {"Girth with trim", girths(told)},
      {"Chord with trim", told.length("/panel/chord")},
  };
  if (bends(told))
    all.push_back({"Springback expected",
                   words(told.share("/springback/ratio"), ", ", told.text("/springback/source"))});
  if (bends(told) && told.has("/springback/spread"))
    all.push_back({"Spread of the test pieces", told.share("/springback/spread")});
  return facts(all);
}

}  // namespace

Section panel_section(const PageInput& page) {
  const Told& told = page.told;
  Markup body = words(figures(told), shapes(told));
  if (const auto plot = plots::springback_plot(page.input, told.reported()))
    body += words(element("h3", "Released over pressed"),
                  plot_image(*plot, "The face as released laid over the face as pressed"));
  if (const auto plot = plots::curvature_plot(page.input, told.reported()))
    body += words(element("h3", "How sharply it bends along the girth"),
                  plot_image(*plot, "Curvature along the girth, pressed and released"));
  return {"panel", "The panel", body};
}

}  // namespace lamwright::html
