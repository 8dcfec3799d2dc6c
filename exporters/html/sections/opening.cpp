#include "exporters/html/sections/finding_rows.hpp"
#include "exporters/html/sections/section.hpp"
#include "exporters/html/table.hpp"
#include "exporters/html/view.hpp"

namespace lamwright::html {
namespace {

constexpr std::size_t kWorst = 3;

Markup verdict_line(const Told& told) {
  const Markup all = told.entries("/findings");
  if (told.having("fail") > 0)
    return words("Do not press it so: ", told.verdicts("fail"), " of ", all,
                 told.having("fail") == 1 ? " checks fails." : " checks fail.");
  if (told.having("caution") > 0)
    return words("It can be pressed: no check fails, ", told.verdicts("caution"), " of ", all,
                 told.having("caution") == 1 ? " asks for care." : " ask for care.");
  return words("It can be pressed: all ", all, " checks pass.");
}

std::string_view worst(const Told& told) {
  return told.having("fail") > 0 ? "fail" : told.having("caution") > 0 ? "caution" : "pass";
}

Markup verdict(const Told& told) {
  const std::string name(worst(told));
  return element("p", words(verdict_sign(name), " ", verdict_line(told)),
                 "id=\"verdict\" class=\"verdict " + name + "\"");
}

Markup worst_findings(const Told& told) {
  Markup items;
  for (const std::size_t i : worst_first(told, kWorst)) items += element("li", finding_in_short(told, i));
  if (items.empty()) return {};
  return words(element("h2", "First look at this"), element("ol", items, "class=\"worst\""));
}

Markup subtitle(const Told& told) {
  Markup out("Job sheet");
  if (!told.text("/number").empty()) out += words(" · No. ", told.text("/number"));
  if (!told.text("/date").empty()) out += words(" · ", told.text("/date"));
  return element("p", out, "class=\"subtitle\"");
}

Markup in_short(const Told& told) {
  std::vector<Fact> all{
      {"Press", words(told.text("/press/method"), ", ", told.entries("/press/stations"), " formers")},
      {"Panels", words(told.count("/panel/count"), " of ", told.length("/panel/width"), " wide, ",
                       told.length("/panel/thickness"), " thick")},
      {"Girth with trim",
       words(told.length("/panel/girth/inner"), " inside, ", told.length("/panel/girth/outer"), " outside")},
      {"Glue", told.text("/glue/name")}};
  if (told.has("/glue/minutes")) all.push_back({"Under pressure", told.minutes("/glue/minutes/pressing")});
  if (told.has("/masses/press")) all.push_back({"Weight, all in", told.mass("/masses/press")});
  return facts(all);
}

}  // namespace

Markup opening(const PageInput& page) {
  const Told& told = page.told;
  const std::string title = told.text("/title");
  return words(element("header", words(element("h1", title.empty() ? "Press" : title), subtitle(told))),
               verdict(told), view(page), in_short(told),
               element("section", worst_findings(told), "id=\"first\""));
}

}  // namespace lamwright::html
