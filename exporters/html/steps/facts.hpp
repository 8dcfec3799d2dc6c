// What the sentences for the bench turn on: which press it is, and where its figures stand in the summary.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "exporters/html/told.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright::html::bench {

// References the input and the figures: both must outlive it.
class Facts {
 public:
  Facts(const ExportInput& input, const Told& told) : input_(input), told_(told) {}

  const ExportInput& input() const { return input_; }
  const PressPlan& plan() const { return input_.plan; }
  const Panel& panel() const { return input_.plan.panel; }
  const Job& job() const { return input_.job; }
  const Told& told() const { return told_; }

  bool halves() const { return plan().sections.front().upper.has_value(); }
  bool strapped() const { return !plan().closures.empty(); }
  bool loops() const { return strapped() && plan().closures.front().loop.has_value(); }
  bool pinned_loops() const { return loops() && plan().closures.front().loop->pinned; }
  bool rollers() const;
  bool staggered() const;
  bool stacked() const;  // formers stand face to face
  bool flats() const { return !plan().flats.empty(); }
  bool pins() const { return !plan().pins.empty(); }
  // Whether the pack bends between its middle and the pins, so much that sheets bored alike come over the
  // pins only with their centre lines stepped.
  bool stepped() const;
  bool pins_in_bed() const { return pins() && plan().pins.front().caul == Layer::Kind::bed_caul; }
  bool layer(Layer::Kind kind) const;
  const char* lining() const;  // what the pack lies on: "cauls", "sheathing" or "mould"
  bool slatted() const { return !plan().cauls.empty(); }
  bool has(PartKind kind) const;
  bool covers() const { return panel().cover > 0; }
  bool curved() const { return !panel().pressed.straight(); }
  bool centred() const;  // the middle of the pack lies on the formers' centre line
  bool glued() const { return input_.figures.glue && input_.figures.glue->lines > 0; }
  bool staged() const { return glued() && input_.figures.glue->staged(); }
  // What the formers stand on, in the plural.
  const char* feet() const {
    return has(PartKind::beam) ? "beams" : has(PartKind::bearer) ? "bearers" : "formers";
  }
  bool slow() const;  // alone, nobody closes it in time
  // Whether a check is there that did not pass.
  bool warned(const std::string& id) const;
  bool hand_clamps() const { return !hardware("one-handed clamp").empty(); }
  bool springs() const { return curved() && panel().springback.share != 0; }
  bool aid(ShopAid::Use use) const;
  // Whether more than one person lifts so much; kg, none where nothing was weighed.
  bool heavy(double Masses::*mass) const;

  // Pointer to the first entry of the list whose text under `key` begins so, "/hardware/3"; without a key the
  // entries are the texts. Empty without one.
  std::string entry(const std::string& list, const std::string& key, const std::string& begins) const;
  std::string hardware(const std::string& name) const { return entry("/hardware", "name", name); }
  std::string finding(const std::string& id) const { return entry("/findings", "id", id); }
  // All entries of that kind, as "/parts/2".
  std::vector<std::string> parts(PartKind kind) const;

 private:
  const ExportInput& input_;
  const Told& told_;
};

// Sentences gathered one after the other.
class Actions {
 public:
  template <typename... Parts>
  Actions& say(const Parts&... parts) {
    list_.push_back(words(parts...));
    return *this;
  }
  // Where it holds. For plain words only: figures are looked up before it is known whether they are there.
  Actions& when(bool holds, const char* sentence) { return holds ? say(sentence) : *this; }
  std::vector<Markup> list() && { return std::move(list_); }

 private:
  std::vector<Markup> list_;
};

}  // namespace lamwright::html::bench
