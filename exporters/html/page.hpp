// The job sheet: one page that needs no other file and no network.
#pragma once
#include <string>

#include "exporters/html/sections/section.hpp"

namespace lamwright::html {

std::string page_text(const PageInput& page);

}  // namespace lamwright::html
