// demo.h: a store filled with the invented workshop of demo/: what ./run shows the first time.
#pragma once

#include <functional>
#include <map>
#include <span>
#include <string>
#include <string_view>

#include "desk/desk.h"

namespace flatwise::desk {

/// Names of the files it is made from, below demo/: "workshop.toml", "history/jobs.csv", ...
[[nodiscard]] std::span<const std::string_view> demo_files();
/// The text of each, by its name.
using DemoTexts = std::map<std::string, std::string, std::less<>>;

/// The texts as they were when the program was built: they need no folder beside it.
[[nodiscard]] DemoTexts demo_built_in();

/// Id that the workshop of the demo has in every store: for making the store.
[[nodiscard]] job::Id demo_workshop_id();

/// Fills an empty store: workshop, people, customers, machines with their hour-meters and bearings' lives, definitions, jobs of
/// three winters, and the jobs that are open. Ids follow from what they are of: made twice it is the same to the bit.
///
/// Refuses    A missing text or one that cannot be read; the store's faults (`exists` where it is not empty).
[[nodiscard]] Done<void> fill_demo(job::Store& store, const DemoTexts& texts);

}  // namespace flatwise::desk
