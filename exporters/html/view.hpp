// The press to look at: a still picture, and the same press to turn and open where the browser draws 3D.
#pragma once
#include "exporters/html/sections/section.hpp"

namespace lamwright::html {

Markup view(const PageInput& page);
// The press as glTF for the view, and the scripts that show it; at the page's end.
Markup view_scripts(const PageInput& page);

}  // namespace lamwright::html
