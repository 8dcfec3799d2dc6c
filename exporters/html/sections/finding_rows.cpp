#include "exporters/html/sections/finding_rows.hpp"

#include <algorithm>

namespace lamwright::html {
namespace {

std::string pointer_of(std::size_t index) { return "/findings/" + std::to_string(index); }

Markup against_limit(const Told& told, const std::string& finding) {
  const std::string unit = told.text(finding + "/unit");
  const Markup value = told.quantity(finding + "/value", unit);
  if (!told.has(finding + "/limit")) return value;
  return words(value, ", ", told.text(finding + "/bound"), " ", told.quantity(finding + "/limit", unit));
}

Markup title_and_place(const Told& told, const std::string& finding) {
  const std::string where = told.text(finding + "/where");
  return words(element("b", told.text(finding + "/title")),
               where.empty() ? Markup() : words(" (", where, ")"));
}

Markup advice_of(const Told& told, const std::string& finding) {
  const std::string advice = told.text(finding + "/advice");
  return advice.empty() ? Markup() : element("p", advice, "class=\"advice\"");
}

}  // namespace

Markup verdict_sign(std::string_view verdict) {
  const char* sign = verdict == "fail" ? "✕" : verdict == "caution" ? "!" : "✓";
  return element(
      "span", sign,
      "class=\"sign " + std::string(verdict) + "\" role=\"img\" aria-label=\"" + std::string(verdict) + "\"");
}

std::vector<std::size_t> worst_first(const Told& told, std::size_t most) {
  std::vector<std::size_t> out;
  for (const char* verdict : {"fail", "caution"})
    for (std::size_t i = 0; i < told.size("/findings"); ++i)
      if (told.text(pointer_of(i) + "/verdict") == verdict) out.push_back(i);
  out.resize(std::min(out.size(), most));
  return out;
}

Markup finding_in_short(const Told& told, std::size_t index) {
  const std::string finding = pointer_of(index);
  return words(verdict_sign(told.text(finding + "/verdict")), " ", title_and_place(told, finding), ": ",
               against_limit(told, finding), ".", advice_of(told, finding));
}

Markup finding_folded(const Told& told, std::size_t index) {
  const std::string finding = pointer_of(index), verdict = told.text(finding + "/verdict");
  const Markup head =
      words(verdict_sign(verdict), " ", title_and_place(told, finding), ": ", against_limit(told, finding));
  const Markup basis = element("p", words("Basis: ", told.text(finding + "/basis")), "class=\"basis\"");
  return element("details", words(element("summary", head), advice_of(told, finding), basis),
                 "class=\"finding " + verdict + "\"" + (verdict == "pass" ? "" : " open"));
}

}  // namespace lamwright::html
