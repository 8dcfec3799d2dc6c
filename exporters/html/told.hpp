// Figures of the summary as a page tells them. Whatever number stands on the page is looked up here, by its
// JSON pointer (RFC 6901), so page and summary.json cannot disagree.
#pragma once
#include <functional>
#include <string>
#include <utility>

#include "exporters/html/markup.hpp"
#include "exporters/json/numbers.hpp"
#include "shared/reported.hpp"

namespace lamwright::html {

// Each figure is <data value="the summary's number" data-of="its pointer" data-as="length">373.1 mm</data>.
// A pointer that leads nowhere is a fault of the program (internal); null is told as a dash.
class Told {
 public:
  Told(const Json& summary, LengthUnit units) : summary_(summary), reported_(units) {}

  const Reported& reported() const { return reported_; }
  bool has(const std::string& pointer) const;  // there, and not null
  const Json& at(const std::string& pointer) const;
  std::size_t size(const std::string& pointer) const;    // of a list
  std::size_t having(const std::string& verdict) const;  // of the findings
  std::string text(const std::string& pointer) const;    // of a string

  Markup length(const std::string& pointer) const;
  Markup bore(const std::string& pointer) const;     // of a drill: "9/64 in (3.5 mm)"
  Markup degrees(const std::string& pointer) const;  // "71.3°"
  Markup pressure(const std::string& pointer) const;
  Markup force(const std::string& pointer) const;
  Markup mass(const std::string& pointer) const;
  Markup minutes(const std::string& pointer) const;   // "12 min", from two hours on "4 h"
  Markup hours(const std::string& pointer) const;     // "24 h"
  Markup share(const std::string& pointer) const;     // 0.018 as "1.8 %"
  Markup grain(const std::string& pointer) const;     // "along", "across" or "30°"
  Markup amount(const std::string& pointer) const;    // of anything, "4.8"
  Markup count(const std::string& pointer) const;     // "8"
  Markup entries(const std::string& pointer) const;   // how many a list has
  Markup verdicts(const std::string& verdict) const;  // how many findings have it
  Markup quantity(const std::string& pointer, const std::string& unit) const;  // of a finding
  // Two of one unit, with as many places as tell them apart.
  std::pair<Markup, Markup> apart(const std::string& one, const std::string& other,
                                  const std::string& unit) const;

 private:
  using Wording = std::function<std::string(double)>;
  Markup figure(const std::string& pointer, const char* as, const Wording& wording) const;

  const Json& summary_;
  Reported reported_;
};

// Whether the panel bends anywhere.
bool bends(const Told& told);

}  // namespace lamwright::html
