// Numbers as SVG writes them in paths, lists of points, transforms and lengths.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "kernel/reading/svg/attribute.hpp"

namespace lamwright::svg_reading {

// Walks over the text of an attribute from its start. Every fault is an Error (job) with the byte.
class NumberScanner {
 public:
  explicit NumberScanner(const Attribute& attribute) : attribute_(attribute) {}

  std::size_t byte() const { return at_; }
  bool at_end() const { return at_ == attribute_.text.size(); }
  char peek() const { return at_end() ? '\0' : attribute_.text[at_]; }
  void skip() { ++at_; }  // one byte; not at the end
  bool skip_space();      // true when there was some
  void skip_comma();      // white space with at most one comma; a number must follow a comma
  bool at_number() const;

  // A number ends where the next cannot belong to it: "0.5.25" holds two, "1-2" too, "3e4" one. Below 1e-30
  // it is 0; beyond 1e30 it is a fault, and so are more than 300 bytes.
  double number();
  bool flag();              // one byte, 0 or 1
  std::string_view word();  // letters, perhaps none
  std::string_view rest();  // all that is left
  void expect_end();        // white space may precede it

  Error fault(const std::string& problem, const std::string& remedy) const;
  Error fault_at(std::size_t byte, const std::string& problem, const std::string& remedy) const;
  std::string found() const;  // what stands here, for messages: "found \"x\"", "the text ends"

 private:
  std::size_t digits();
  std::string_view number_text();

  Attribute attribute_;
  std::size_t at_ = 0;
};

// Numbers to the end of the text, separated by white space or commas; 1 000 000 at most.
std::vector<double> read_numbers(const Attribute& attribute);

}  // namespace lamwright::svg_reading
