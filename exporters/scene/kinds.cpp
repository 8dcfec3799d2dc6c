#include <array>

#include "exporters/scene/scene.hpp"

namespace lamwright::scene {
namespace {

struct Look {
  const char* title;
  const char* colour;
};

// By Kind. CIE 1976 lightness 45, 82, 57, 63, 92, 37, 72, 50, 18, 29: four apart at least.
constexpr std::array<Look, kKinds> kLooks{{{"Beams", "#8b6342"},
                                           {"Formers", "#e3c9a0"},
                                           {"Blocks", "#a8834f"},
                                           {"Bed caul", "#8aa07c"},
                                           {"Covers and sheathing", "#ebe7d8"},
                                           {"Panel", "#a02f1f"},
                                           {"Top caul", "#a9b78c"},
                                           {"Pressing beams", "#7d7860"},
                                           {"Pins", "#2b2d30"},
                                           {"Straps", "#1f466f"}}};

const Look& look(Kind kind) { return kLooks[std::size_t(kind)]; }

}  // namespace

std::string title(Kind kind) { return look(kind).title; }
std::string colour(Kind kind) { return look(kind).colour; }

}  // namespace lamwright::scene
