#include "kernel/plugin/memory.hpp"

namespace lamwright {

std::string MemorySources::read(const std::string& name) const {
  const auto found = files_.find(name);
  if (found == files_.end()) throw file_error(name, "cannot be read: no such file");
  return found->second;
}

void MemorySink::write(const std::string& path, std::string_view bytes) {
  names_.push_back(path);
  files_[path] = bytes;
}

}  // namespace lamwright
