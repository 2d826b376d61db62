#include "tools/scenarios/sheet_style.hpp"

#include <fmt/format.h>

#include "tools/present/palette.hpp"

namespace stillground::scenarios {

std::string sheet_style() {
  const std::string inks =
      fmt::format(":root {{ --ink: {}; --quiet: {}; --line: {}; --bore: {}; --alarm: {}; }}\n", present::ink,
                  present::quiet_ink, present::grid_ink, present::bore_ink, present::limit_ink);
  return inks + R"css(
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 60rem; color: var(--ink); background: #fff; overflow-wrap: anywhere;
  font: 1rem/1.45 "Source Sans 3", "Noto Sans", "DejaVu Sans", Verdana, sans-serif; }
header { border-left: 0.5rem solid var(--bore); padding-left: 0.9rem; margin-bottom: 1rem; }
header p { margin: 0; }
.kind { color: var(--bore); font-weight: 600; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0.1rem 0 0.3rem; }
h2 { font-size: 1.15rem; margin: 0 0 0.4rem; color: var(--bore); }
section { margin: 0 0 1.6rem; }
.cautions { border: 2px solid var(--alarm); border-left-width: 0.5rem; padding: 0.7rem 0.9rem; }
.cautions h2 { color: var(--alarm); }
.cautions ul { margin: 0 0 0.6rem; padding-left: 1.1rem; }
.cautions p { margin: 0; }
dl { margin: 0 0 0.5rem; border-top: 1px solid var(--quiet); }
dl div { padding: 0.25rem 0; border-bottom: 1px solid var(--line); }
dd { margin: 0; font-weight: 600; font-variant-numeric: tabular-nums; }
.below dt { padding-left: 1rem; }
.rule { display: block; font-weight: 400; font-size: 0.85rem; color: var(--quiet); }
section > p { margin: 0.4rem 0; }
.frame { overflow-x: auto; margin: 0.7rem 0; }
.frame:focus-visible { outline: 3px solid var(--bore); }
table { border-collapse: collapse; min-width: 100%; overflow-wrap: normal; font-variant-numeric: tabular-nums; }
th { text-align: left; font-weight: 600; border-bottom: 2px solid var(--bore); padding: 0.2rem 0.6rem; vertical-align: bottom; }
td { border-bottom: 1px solid var(--line); padding: 0.2rem 0.6rem; height: 1.9rem; }
.number { text-align: right; white-space: nowrap; }
.blank { border: 1px solid var(--quiet); }
figure { margin: 0 0 1.6rem; }
figure svg { width: 100%; height: auto; }
footer { border-top: 1px solid var(--quiet); padding-top: 0.4rem; color: var(--quiet); font-size: 0.85rem; }
@media (min-width: 40rem) { dl div { display: grid; grid-template-columns: 19rem 1fr; gap: 1rem; } }
@page { margin: 14mm 13mm 16mm; @bottom-right { content: counter(page) " of " counter(pages); font: 9pt sans-serif; } }
@media print {
  body { font-size: 9.5pt; max-width: none; padding: 0; }
  .frame { overflow: visible; }
  table { font-size: 9pt; }
  h2, thead { break-after: avoid; }
  tr, dl div, figure, .cautions, figure ~ section { break-inside: avoid; }
  figure svg { max-height: 225mm; }
}
)css";
}

}  // namespace stillground::scenarios
