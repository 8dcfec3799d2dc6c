// Files that are built into the program and go into every page.
#pragma once
#include <string_view>

namespace lamwright::html::assets {

std::string_view style();
// The 3D library with its licence, its turning by mouse and finger, its reader of glTF, and our view; in that
// order, one script.
std::string_view script();

}  // namespace lamwright::html::assets
