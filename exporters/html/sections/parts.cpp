#include <array>
#include <set>

#include "exporters/html/image.hpp"
#include "exporters/html/sections/section.hpp"
#include "exporters/html/table.hpp"

namespace lamwright::html {
namespace {

constexpr int kWidth = 360, kHeight = 240;  // of a part's picture, pixels

// "bores: foot screw 6 mm, strap 12 mm", each kind once.
Markup bores_text(const Told& told, const std::string& part) {
  Markup out;
  std::set<std::pair<std::string, double>> seen;
  for (std::size_t i = 0; i < told.size(part + "/holes"); ++i) {
    const std::string hole = part + "/holes/" + std::to_string(i), use = told.text(hole + "/use");
    if (!seen.insert({use, told.at(hole + "/diameter").get<double>()}).second) continue;
    out += words(out.empty() ? "" : ", ", use, " ", told.bore(hole + "/diameter"));
  }
  return out.empty() ? out
                     : element("p", words(told.entries(part + "/holes"),
                                          told.size(part + "/holes") == 1 ? " bore: " : " bores: ", out));
}

Markup size_text(const Told& told, const std::string& part) {
  return words(told.length(part + "/size/0"), " × ", told.length(part + "/size/1"), " × ",
               told.length(part + "/size/2"));
}

Markup card(const Told& told, const std::string& pointer, const Part& part) {
  const Markup picture = image(picture::render(scene::scene_of(part), {}, kWidth, kHeight),
                               words("Picture of ", part.name()), "part");
  return element(
      "article",
      words(picture, element("h3", words(told.count(pointer + "/count"), " × ", part.name())),
            element("p", size_text(told, pointer)), element("p", part.stock()), bores_text(told, pointer)));
}

// What the press is made of first; slats and the panel have tables of their own.
constexpr std::array kOrder{PartKind::former_lower,  PartKind::former_upper, PartKind::beam,
                            PartKind::bearer,        PartKind::spacer_block, PartKind::fixing_block,
                            PartKind::pressing_beam, PartKind::stop,         PartKind::shape_template,
                            PartKind::cradle};

Markup cards(const PageInput& page) {
  Markup out;
  const PressPlan& plan = page.input.plan;
  for (const PartKind kind : kOrder)
    for (std::size_t i = 0; i < plan.parts.size(); ++i)
      if (plan.parts[i].kind() == kind) out += card(page.told, "/parts/" + std::to_string(i), plan.parts[i]);
  for (std::size_t i = 0; i < plan.aids.size(); ++i)
    out += card(page.told, "/aids/" + std::to_string(i), plan.aids[i].part);
  return element("div", out, "class=\"cards\"");
}

Markup slats_table(const PageInput& page) {
  std::vector<std::vector<Markup>> rows;
  const PressPlan& plan = page.input.plan;
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    if (plan.parts[i].kind() != PartKind::slat) continue;
    const std::string part = "/parts/" + std::to_string(i);
    rows.push_back({plan.parts[i].name(), page.told.count(part + "/count"), size_text(page.told, part),
                    page.told.entries(part + "/holes")});
  }
  if (rows.empty()) return {};
  return words(
      element("h3", "Slats of the cauls"),
      table({{"slat"}, {"count", true}, {"length × width × thickness", true}, {"bores", true}}, rows));
}

}  // namespace

Section parts_section(const PageInput& page) {
  return {"parts", "Parts", words(cards(page), slats_table(page))};
}

}  // namespace lamwright::html
