#include "exporters/html/image.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "exporters/svg/svg_writer.hpp"
#include "shared/number.hpp"

namespace lamwright::html {
namespace {

Markup embedded(std::string_view type, std::string_view bytes, double width, double height,
                const Markup& says, std::string_view name) {
  std::string text = "<img class=\"";
  const std::string data = base64(bytes);
  text.reserve(data.size() + 200 + says.text().size());
  text += name;
  text += "\" width=\"" + number(std::round(width)) + "\" height=\"" + number(std::round(height)) +
          "\" alt=\"" + says.text() + "\" src=\"data:";
  text += type;
  ((text += ";base64,") += data) += "\">";
  return Markup::raw(std::move(text));
}

}  // namespace

std::string base64(std::string_view bytes) {
  constexpr char kSigns[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out((bytes.size() + 2) / 3 * 4, '=');
  char* to = out.data();
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::size_t given = std::min<std::size_t>(3, bytes.size() - i);
    std::uint32_t three = 0;
    for (std::size_t k = 0; k < 3; ++k)
      three = three << 8 | (k < given ? static_cast<unsigned char>(bytes[i + k]) : 0u);
    for (std::size_t k = 0; k < 4; ++k, ++to)
      if (k <= given) *to = kSigns[three >> (18 - 6 * k) & 63];
  }
  return out;
}

Markup image(const drawing::Drawing& drawing, const Markup& says, std::string_view name) {
  constexpr double kPixels = 96 / 25.4;  // CSS Values and Units: 96 to the inch
  return embedded("image/svg+xml", svg_text(drawing), kPixels * drawing.size().x(),
                  kPixels * drawing.size().y(), says, name);
}

Markup plot_image(const drawing::Drawing& plot, const Markup& says) {
  return element("div", image(plot, says, "plot"), "class=\"wide\"");
}

Markup image(const picture::Image& image, const Markup& says, std::string_view name) {
  return embedded("image/png", picture::png(image), image.width, image.height, says, name);
}

}  // namespace lamwright::html
