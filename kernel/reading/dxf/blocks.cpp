#include "kernel/reading/dxf/blocks.hpp"

#include "kernel/reading/dxf/limits.hpp"
#include "kernel/reading/dxf/names.hpp"
#include "shared/text.hpp"

namespace lamwright::dxf_reading {

void Blocks::add(const Record& head, const Records& following) {
  const std::string name = head.name(2);
  blocks_.try_emplace(small_letters(name),
                      Block{name, {head.number(10, 0), head.number(20, 0)}, following, std::nullopt});
  ensure_names(blocks_.size(), "blocks", *head.file, head.line);
}

Block* Blocks::find(const std::string& name) {
  const auto found = blocks_.find(small_letters(name));
  return found == blocks_.end() ? nullptr : &found->second;
}

}  // namespace lamwright::dxf_reading
