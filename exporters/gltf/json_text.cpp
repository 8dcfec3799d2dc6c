#include "exporters/gltf/json_text.hpp"

namespace lamwright::gltf {

std::string json_line(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

std::size_t JsonList::add(const Json& entry) {
  if (size_ > 0) entries_ += ',';
  entries_ += json_line(entry);
  return size_++;
}

void JsonObject::add(std::string_view name, std::string_view json) {
  if (!members_.empty()) members_ += ',';
  ((members_ += '"') += name) += "\":";
  members_ += json;
}

void JsonObject::add(std::string_view name, const JsonList& list) {
  if (!list.empty()) add(name, list.text());
}

}  // namespace lamwright::gltf
