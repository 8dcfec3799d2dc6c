// The trade tables of data/*.toml as compiled in.
#pragma once
#include <string_view>
#include <vector>

namespace lamwright {

struct TradeText {
  std::string_view name;  // "timbers"
  std::string_view text;  // TOML
};

const std::vector<TradeText>& trade_texts();

}  // namespace lamwright
