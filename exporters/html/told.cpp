#include "exporters/html/told.hpp"

#include <algorithm>

#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright::html {
namespace {

constexpr double kLongMinutes = 120;  // from here on told in hours

std::string minutes_text(double minutes) {
  return minutes < kLongMinutes ? number(minutes, minutes < 10 ? 1 : 0) + " min"
                                : number(minutes / 60, 1) + " h";
}

Markup data(const std::string& value, const std::string& pointer, const std::string& as,
            const std::string& text) {
  return element("data", text,
                 "value=\"" + value + "\" data-of=\"" + Markup(pointer).text() + "\" data-as=\"" +
                     Markup(as).text() + "\"");
}

std::string grain_text(double degrees) {
  if (degrees == 0) return "along";
  return degrees == 90 ? "across" : number(degrees, 1) + "°";
}

}  // namespace

const Json& Told::at(const std::string& pointer) const {
  const Json::json_pointer path(pointer);
  ensure(summary_.contains(path), ("the summary has no " + pointer).c_str());
  return summary_.at(path);
}

bool Told::has(const std::string& pointer) const {
  const Json::json_pointer path(pointer);
  return summary_.contains(path) && !summary_.at(path).is_null();
}

std::size_t Told::size(const std::string& pointer) const { return at(pointer).size(); }
std::string Told::text(const std::string& pointer) const { return at(pointer).get<std::string>(); }

Markup Told::figure(const std::string& pointer, const char* as, const Wording& wording) const {
  const Json& value = at(pointer);
  if (value.is_null()) return Markup("–");
  return data(value.dump(), pointer, as, wording(value.get<double>()));
}

Markup Told::length(const std::string& pointer) const {
  return figure(pointer, "length", [&](double v) { return reported_.length(v); });
}
Markup Told::bore(const std::string& pointer) const {
  return figure(pointer, "bore", [&](double v) { return reported_.bore(v); });
}
Markup Told::degrees(const std::string& pointer) const {
  return figure(pointer, "degrees", [](double v) { return number(v, 1) + "°"; });
}
Markup Told::pressure(const std::string& pointer) const {
  return figure(pointer, "pressure", [&](double v) { return reported_.pressure(v); });
}
Markup Told::force(const std::string& pointer) const {
  return figure(pointer, "force", [&](double v) { return reported_.force(v); });
}
Markup Told::mass(const std::string& pointer) const {
  return figure(pointer, "mass", [&](double v) { return reported_.mass(v); });
}
Markup Told::minutes(const std::string& pointer) const { return figure(pointer, "minutes", minutes_text); }
Markup Told::hours(const std::string& pointer) const {
  return figure(pointer, "hours", [](double v) { return number(v, 1) + " h"; });
}
Markup Told::share(const std::string& pointer) const {
  return figure(pointer, "share", [](double v) { return number(100 * v, 1) + " %"; });
}
Markup Told::grain(const std::string& pointer) const { return figure(pointer, "grain", grain_text); }
Markup Told::amount(const std::string& pointer) const {
  return figure(pointer, "amount", [](double v) { return number(v, 3); });
}
Markup Told::entries(const std::string& pointer) const {
  const std::string count = std::to_string(size(pointer));
  return data(count, pointer, "entries", count);
}
std::size_t Told::having(const std::string& verdict) const {
  const Json& findings = at("/findings");
  return std::size_t(std::count_if(findings.begin(), findings.end(), [&](const Json& finding) {
    return finding.at("verdict").get_ref<const std::string&>() == verdict;
  }));
}
Markup Told::verdicts(const std::string& verdict) const {
  const std::string count = std::to_string(having(verdict));
  return data(count, "/findings", verdict, count);
}
Markup Told::count(const std::string& pointer) const {
  return figure(pointer, "count", [](double v) { return number(v); });
}
Markup Told::quantity(const std::string& pointer, const std::string& unit) const {
  return figure(pointer, unit.c_str(), [&](double v) { return reported_.quantity(v, unit); });
}

std::pair<Markup, Markup> Told::apart(const std::string& one, const std::string& other,
                                      const std::string& unit) const {
  const Json &a = at(one), &b = at(other);
  if (a.is_null() || b.is_null()) return {quantity(one, unit), quantity(other, unit)};
  const auto texts = reported_.told_apart(a.get<double>(), b.get<double>(), unit);
  return {data(a.dump(), one, "apart", texts.first), data(b.dump(), other, "apart", texts.second)};
}

bool bends(const Told& told) {
  const Json& runs = told.at("/panel/pressed/runs");
  return std::any_of(runs.begin(), runs.end(), [](const Json& run) { return !run.at("radius").is_null(); });
}

}  // namespace lamwright::html
