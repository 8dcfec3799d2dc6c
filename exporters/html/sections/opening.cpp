#include <algorithm>

#include "exporters/html/sections/finding_rows.hpp"
#include "exporters/html/sections/section.hpp"
#include "exporters/html/table.hpp"
#include "exporters/html/view.hpp"

namespace lamwright::html {
namespace {

constexpr std::size_t kWorst = 3;

Markup verdict_line(const Told& told) {
  const Markup all = told.entries("/findings");
  const std::size_t fails = told.having("fail"), cautions = told.having("caution");
  if (fails > 0)
    return words("Do not press it so: ", told.verdicts("fail"), " of ", all,
                 fails == 1 ? " checks fails." : " checks fail.");
  if (cautions > 0)
    return words("No check fails, ", told.verdicts("caution"), " of ", all,
                 cautions == 1 ? " asks for care." : " ask for care.");
  return words("It can be pressed: all ", all, " checks pass.");
}

std::string_view worst(const Told& told) {
  return told.having("fail") > 0 ? "fail" : told.having("caution") > 0 ? "caution" : "pass";
}

// With the first finding, for a count alone does not say how bad it is.
Markup verdict(const Told& told, const std::vector<std::size_t>& first) {
  const std::string name(worst(told));
  Markup line = words(verdict_sign(name), " ", verdict_line(told));
  if (!first.empty())
    line += words(" ", element("span", words("First: ", finding_title(told, first.front()), ".")));
  return element("p", line, "id=\"verdict\" class=\"verdict " + name + "\"");
}

Markup rest_of(std::size_t shown, std::size_t all) {
  if (shown >= all) return {};
  return element("p", words("More stands under ", element("a", "Checks", "href=\"#findings\""), "."));
}

// All that fails, and cautions up to three in all.
Markup first_findings(const Told& told, const std::vector<std::size_t>& order) {
  const std::size_t shown = std::min(order.size(), std::max(kWorst, failing(told, order)));
  Markup items;
  for (std::size_t i = 0; i < shown; ++i) items += element("li", finding_in_short(told, order[i]));
  if (items.empty()) return {};
  return words(element("h2", "First look at this"), element("ol", items, "class=\"worst\""),
               rest_of(shown, order.size()));
}

Markup subtitle(const Told& told) {
  Markup out("Job sheet");
  if (!told.text("/number").empty()) out += words(" · No. ", told.text("/number"));
  if (!told.text("/date").empty()) out += words(" · ", told.text("/date"));
  return element("p", out, "class=\"subtitle\"");
}

Markup girth(const Told& told) {
  if (!bends(told)) return told.length("/panel/girth/neutral");
  return words(told.length("/panel/girth/inner"), " inside, ", told.length("/panel/girth/outer"), " outside");
}

Markup in_short(const Told& told) {
  std::vector<Fact> all{
      {"Press", words(told.text("/press/method"), ", ", told.entries("/press/stations"), " formers")},
      {"Panels", words(told.count("/panel/count"), " of ", told.length("/panel/width"), " wide, ",
                       told.length("/panel/thickness"), " thick")},
      {"Girth with trim", girth(told)},
      {"Glue", told.text("/glue/name")}};
  if (told.has("/glue/minutes")) all.push_back({"Under pressure", told.minutes("/glue/minutes/pressing")});
  if (told.has("/masses/press")) all.push_back({"Weight, all in", told.mass("/masses/press")});
  return facts(all);
}

}  // namespace

Markup opening(const PageInput& page) {
  const Told& told = page.told;
  const std::string title = told.text("/title");
  const std::vector<std::size_t> first = worst_of_each_title(told);
  return words(element("header",
                       words(element("h1", element("bdi", title.empty() ? "Press" : title)), subtitle(told))),
               verdict(told, first), view(page), in_short(told),
               element("section", first_findings(told, first), "id=\"first\""));
}

}  // namespace lamwright::html
