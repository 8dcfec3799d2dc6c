// The document as a tree.
#pragma once
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "kernel/reading/svg/element.hpp"

namespace tinyxml2 {
class XMLDocument;
}

namespace lamwright::svg_reading {

class Document {
 public:
  // Throws Error (job) with the line: what check_markup refuses, text that is no XML, more than one outermost
  // element or one that is not svg.
  Document(std::string_view text, const std::string& file);
  ~Document();
  Document(const Document&) = delete;
  Document& operator=(const Document&) = delete;

  const Element& outermost() const { return *outermost_; }
  // Of SVG's own namespace, not an editor's.
  bool is_svg(const Element& element) const;
  // The first element with this id, or null.
  const Element* find(std::string_view id) const;
  // Of all style sheets in the document, one after the other.
  const std::string& style_sheets() const { return style_sheets_; }

 private:
  void parse(std::string_view text, const std::string& file);
  void learn_prefixes();
  void learn(const Element& element);

  std::unique_ptr<tinyxml2::XMLDocument> xml_;
  const Element* outermost_ = nullptr;
  std::vector<std::string_view> prefixes_;
  std::map<std::string_view, const Element*> ids_;
  std::string style_sheets_;
};

}  // namespace lamwright::svg_reading
