// Pictures inside a page: whole in the page's own text, so that it needs no other file.
#pragma once
#include <string>
#include <string_view>

#include "exporters/drawing/drawing.hpp"
#include "exporters/html/markup.hpp"
#include "exporters/picture/picture.hpp"

namespace lamwright::html {

// RFC 4648, with padding.
std::string base64(std::string_view bytes);

// `says` is read out where the picture cannot be seen. `name` is its class.
Markup image(const drawing::Drawing& drawing, const Markup& says, std::string_view name);
// A plot: it scrolls sideways where the screen is too narrow to read it.
Markup plot_image(const drawing::Drawing& plot, const Markup& says);
Markup image(const picture::Image& image, const Markup& says, std::string_view name = "still");

}  // namespace lamwright::html
