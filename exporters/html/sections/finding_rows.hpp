// Findings as a page tells them.
#pragma once
#include <string_view>
#include <vector>

#include "exporters/html/told.hpp"

namespace lamwright::html {

// "pass", "caution" or "fail" as a sign that also a grey print tells apart.
Markup verdict_sign(std::string_view verdict);
// Indices of findings that do not pass, fails first.
std::vector<std::size_t> worst_first(const Told& told);
// The same, of those of one title only the one farthest beyond its limit.
std::vector<std::size_t> worst_of_each_title(const Told& told);
// How many of these fail.
std::size_t failing(const Told& told, const std::vector<std::size_t>& findings);
// Title and value against limit.
Markup finding_title(const Told& told, std::size_t index);
// Sign, title, place, value against limit and what to do.
Markup finding_in_short(const Told& told, std::size_t index);
// The same as a piece that folds open to its basis.
Markup finding_folded(const Told& told, std::size_t index);

}  // namespace lamwright::html
