#include "exporters/html/page.hpp"

#include <cctype>
#include <vector>

#include "exporters/html/assets.hpp"
#include "exporters/html/view.hpp"

namespace lamwright::html {
namespace {

// Nothing may be fetched: everything is in the page.
constexpr const char* kPolicy =
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src data:; style-src "
    "'unsafe-inline'; "
    "script-src 'unsafe-inline'\">";

// In the margin of every printed page, for sheets get apart: the job's number, and what must not be missed.
// (CSS Paged Media, margin boxes.)
Markup margins(const Told& told) {
  std::string number;
  for (const char c : told.text("/number"))
    if (std::isalnum(static_cast<unsigned char>(c))) number += c;
  const char* fails = told.having("fail") > 0 ? "CHECKS FAIL: DO NOT PRESS IT SO" : "";
  const char* paper = told.reported().imperial() ? "size:letter;" : "";
  return Markup::raw("@page{" + std::string(paper) + "@bottom-left{content:\"Job sheet " + number +
                     "\"}@bottom-center{content:\"" + fails +
                     "\"}@bottom-right{content:counter(page) \" of \" counter(pages)}}");
}

Markup head(const Told& told) {
  const std::string title = told.text("/title");
  return element(
      "head", words(Markup::raw("<meta charset=\"utf-8\">"), Markup::raw(kPolicy),
                    Markup::raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"),
                    element("title", title.empty() ? "Job sheet" : title + ": job sheet"),
                    element("style", words(Markup::raw(std::string(assets::style())), margins(told)))));
}

std::vector<Section> sections(const PageInput& page) {
  std::vector<Section> out;  // made one by one, for a list in braces would copy their pictures
  for (const auto section :
       {panel_section, layup_section, parts_section, closing_section, pressure_section, findings_section,
        setup_section, lists_section, sheets_section, notes_section, drawings_section})
    out.push_back(section(page));
  return out;
}

Markup contents(const std::vector<Section>& all) {
  Markup out;
  for (const Section& section : all)
    if (!section.body.empty())
      out += element("a", Markup(section.title), "href=\"#" + std::string(section.id) + "\"");
  return element("nav", out);
}

Markup section_element(const Section& section) {
  if (section.body.empty()) return {};
  return element("section", words(element("h2", Markup(section.title)), section.body),
                 "id=\"" + std::string(section.id) + "\"");
}

Markup units_note(const Told& told) {
  if (told.reported().unit() == LengthUnit::mm) return {};
  return element("p", "Bare numbers inside advice, notes and names of stock are in mm.", "class=\"units\"");
}

}  // namespace

std::string page_text(const PageInput& page) {
  const std::vector<Section> all = sections(page);
  std::string out = "<!DOCTYPE html>\n<html lang=\"en\">" + head(page.told).text() + "<body><main>";
  const auto add = [&](const Markup& markup) { out += markup.text(); };
  add(opening(page));
  add(units_note(page.told));
  add(contents(all));
  for (const Section& section : all) add(section_element(section));
  out += "</main>";
  add(view_scripts(page));
  out += "</body></html>\n";
  return out;
}

}  // namespace lamwright::html
