// JSON as text while it grows: the tree of values of a large press takes many times the room.
#pragma once
#include <string>
#include <string_view>

#include "exporters/json/numbers.hpp"

namespace lamwright::gltf {

// On one line; bytes that are no UTF-8 are replaced.
std::string json_line(const Json& json);

class JsonList {
 public:
  std::size_t add(const Json& entry);  // gives its index
  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  std::string text() const { return "[" + entries_ + "]"; }
  const std::string& entries() const { return entries_; }  // with commas between them

 private:
  std::string entries_;
  std::size_t size_ = 0;
};

class JsonObject {
 public:
  // `json`: one value as text. Names are words of our own.
  void add(std::string_view name, std::string_view json);
  // Nothing where it is empty: glTF knows no empty lists.
  void add(std::string_view name, const JsonList& list);
  std::string text() const { return "{" + members_ + "}"; }

 private:
  std::string members_;
};

}  // namespace lamwright::gltf
