#include "exporters/html/sections/finding_rows.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright::html {
namespace {

std::string pointer_of(std::size_t index) { return "/findings/" + std::to_string(index); }

Markup against_limit(const Told& told, const std::string& finding) {
  const std::string unit = told.text(finding + "/unit");
  if (!told.has(finding + "/limit")) return told.quantity(finding + "/value", unit);
  const auto [value, limit] = told.apart(finding + "/value", finding + "/limit", unit);
  return words(value, ", ", told.text(finding + "/bound"), " ", limit);
}

// How far the value lies beyond its limit, 1 at it; 0 where there is none.
double beyond(const Told& told, const std::string& finding) {
  if (!told.has(finding + "/limit") || !told.has(finding + "/value")) return 0;
  const double value = told.at(finding + "/value").get<double>(),
               limit = told.at(finding + "/limit").get<double>();
  const bool least = told.text(finding + "/bound") == "at least";
  const double over = least ? limit : value, under = least ? value : limit;
  return under > 0 ? over / under : over > 0 ? INFINITY : 0;
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

std::vector<std::size_t> worst_first(const Told& told) {
  std::vector<std::size_t> out;
  for (const char* verdict : {"fail", "caution"})
    for (std::size_t i = 0; i < told.size("/findings"); ++i)
      if (told.text(pointer_of(i) + "/verdict") == verdict) out.push_back(i);
  return out;
}

std::vector<std::size_t> worst_of_each_title(const Told& told) {
  std::vector<std::size_t> out;
  for (const std::size_t i : worst_first(told)) {
    const auto same = std::find_if(out.begin(), out.end(), [&](std::size_t k) {
      return told.text(pointer_of(k) + "/title") == told.text(pointer_of(i) + "/title");
    });
    if (same == out.end())
      out.push_back(i);
    else if (told.text(pointer_of(*same) + "/verdict") == told.text(pointer_of(i) + "/verdict") &&
             beyond(told, pointer_of(i)) > beyond(told, pointer_of(*same)))
      *same = i;
  }
  return out;
}

std::size_t failing(const Told& told, const std::vector<std::size_t>& findings) {
  return std::size_t(std::count_if(findings.begin(), findings.end(), [&](std::size_t i) {
    return told.text(pointer_of(i) + "/verdict") == "fail";
  }));
}

Markup finding_title(const Told& told, std::size_t index) {
  const std::string finding = pointer_of(index);
  return words(told.text(finding + "/title"), ", ", against_limit(told, finding));
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
