// The blocks of a drawing.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "kernel/reading/dxf/items.hpp"

namespace lamwright::dxf_reading {

// Read when it is first inserted: what nobody inserts is neither read nor judged.
struct Block {
  std::string name;
  Vec2 base{0, 0};
  Records content;  // stands at its first entity
  std::optional<std::vector<Item>> items;
};

class Blocks {
 public:
  // A record BLOCK and what follows it. Of two of one name the first counts.
  void add(const Record& head, const Records& following);
  Block* find(const std::string& name);  // null when there is none

 private:
  std::map<std::string, Block> blocks_;
};

}  // namespace lamwright::dxf_reading
