#include "exporters/html/view.hpp"

#include <set>

#include "exporters/gltf/shared_glb.hpp"
#include "exporters/html/assets.hpp"
#include "exporters/html/image.hpp"

namespace lamwright::html {
namespace {

constexpr int kWidth = 1200, kHeight = 800;  // of the still picture, pixels

std::set<scene::Kind> kinds_of(const scene::Scene& scene) {
  std::set<scene::Kind> kinds;
  for (const scene::Piece& piece : scene.pieces) kinds.insert(piece.kind);
  return kinds;
}

Markup kind_box(scene::Kind kind) {
  const Markup box = Markup::raw("<input type=\"checkbox\" checked data-kind=\"" +
                                 Markup(scene::title(kind)).text() + "\">");
  const Markup swatch =
      element("span", {}, "class=\"swatch\" style=\"background:" + scene::colour(kind) + "\"");
  return element("label", words(box, swatch, scene::title(kind)));
}

Markup controls(const scene::Scene& scene) {
  Markup boxes;
  for (const scene::Kind kind : kinds_of(scene)) boxes += kind_box(kind);
  const Markup slider = element(
      "label",
      words("shut ",
            Markup::raw("<input type=\"range\" id=\"open\" min=\"0\" max=\"1\" step=\"0.01\" value=\"0\">"),
            " open"),
      "class=\"slider\"");
  const Markup again = element("button", "Look as at first", "type=\"button\" id=\"front\"");
  return element("div", words(element("div", words(slider, again)), element("div", boxes, "id=\"kinds\"")),
                 "id=\"controls\" hidden");
}

}  // namespace

Markup view(const PageInput& page) {
  const Markup still =
      image(picture::render(page.scene, {}, kWidth, kHeight), "Picture of the press", "still");
  const Markup name = element("output", {}, "id=\"name\"");
  const Markup hint = element("figcaption",
                              "Drag to turn; after a click or tap also two fingers, the wheel or + and - to "
                              "come nearer, arrows to turn. Point at a piece to read its name.",
                              "id=\"hint\" hidden");
  return element("figure",
                 words(element("div", words(still, name), "id=\"stage\""), hint, controls(page.scene)),
                 "id=\"view\"");
}

Markup view_scripts(const PageInput& page) {
  const std::string mesh = base64(*shared_glb(page.input));
  return words(element("script", Markup::raw(mesh), "type=\"application/octet-stream\" id=\"press-glb\""),
               element("script", Markup::raw(std::string(assets::script())), "id=\"viewer\""));
}

}  // namespace lamwright::html
