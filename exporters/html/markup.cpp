#include "exporters/html/markup.hpp"

namespace lamwright::html {
namespace {

std::string escaped(std::string_view plain) {
  std::string out;
  out.reserve(plain.size());
  for (const char c : plain) {
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else if (c == '\'')
      out += "&#39;";
    else
      out += static_cast<unsigned char>(c) < 0x20 || c == 0x7F ? ' ' : c;
  }
  return out;
}

}  // namespace

Markup::Markup(std::string_view plain) : text_(escaped(plain)) {}

Markup Markup::raw(std::string text) {
  Markup out;
  out.text_ = std::move(text);
  return out;
}

Markup& Markup::operator+=(const Markup& other) {
  text_ += other.text_;
  return *this;
}

Markup element(std::string_view name, const Markup& content, std::string_view attributes) {
  std::string text;
  text.reserve(content.text().size() + attributes.size() + 2 * name.size() + 8);  // some are megabytes
  (text += '<') += name;
  if (!attributes.empty()) (text += ' ') += attributes;
  ((text += '>') += content.text()) += "</";
  (text += name) += '>';
  return Markup::raw(std::move(text));
}

}  // namespace lamwright::html
