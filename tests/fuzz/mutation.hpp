// New inputs from old ones.
#pragma once
#include <string>
#include <vector>

#include "tests/fuzz/dice.hpp"

namespace lamwright::fuzz {

// What inputs are made from; no list is empty.
struct Material {
  std::vector<std::string> inputs;
  std::vector<std::string> sound;  // those that the reader took: beyond them lies more than behind a refusal
  std::vector<std::string> words;  // that mean something to the reader
};

// One of the inputs, mostly a sound one, after one to eight changes: bytes flipped, put in and taken out, two
// inputs spliced, blocks repeated, numbers made extreme, words put in; or, half of the time, only gentle
// ones: numbers scaled, names exchanged, lines put in and taken out. At most `longest` bytes.
std::string mutated(const Material& material, std::size_t longest, Dice& dice);

}  // namespace lamwright::fuzz
