#include "tools/present/page.hpp"

#include <fmt/format.h>

#include "tools/present/canvas.hpp"

namespace stillground::present {

namespace {

constexpr const char* style = R"(
:root { --ink: #22272b; --quiet: #5a636a; --rule: #c9cfcb; --paper: #ffffff; --wash: #f3f5f2; --mark: #17494d; --bad: #8d1f3c; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--paper); color: var(--ink);
       font: 16px/1.5 'Source Sans 3', 'Noto Sans', 'DejaVu Sans', Verdana, sans-serif; }
main, header, footer { max-width: 60rem; margin: 0 auto; padding: 0 1.25rem; }
header { padding-top: 2rem; }
h1 { font-size: 1.75rem; line-height: 1.2; margin: 0 0 .4rem; overflow-wrap: anywhere; }
h2 { font-size: 1.25rem; line-height: 1.25; margin: 2.4rem 0 .6rem; padding-top: .5rem; border-top: 3px solid var(--mark); }
h3 { font-size: 1.05rem; margin: 1.4rem 0 .4rem; overflow-wrap: anywhere; }
p, ul, ol, dl { margin: .5rem 0; }
p, li, dd, dt, td, th { overflow-wrap: break-word; }
a { color: var(--mark); }
:focus-visible { outline: 3px solid var(--mark); outline-offset: 2px; }
.quiet { color: var(--quiet); }
.verdict { border-left: .5rem solid var(--mark); background: var(--wash); padding: .8rem 1rem; margin: 1rem 0; }
.verdict.beyond { border-left-color: var(--bad); }
.verdict p { margin: .25rem 0; }
.verdict .say { font-size: 1.2rem; font-weight: 600; }
figure { margin: 1rem 0; }
figure svg { display: block; width: 100%; height: auto; }
figcaption { color: var(--quiet); }
.wide { overflow-x: auto; margin: .6rem 0; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; font-size: .94rem; }
caption { text-align: left; font-weight: 600; padding-bottom: .3rem; }
th, td { padding: .18rem .7rem .18rem 0; text-align: right; vertical-align: top; border-bottom: 1px solid var(--rule); }
th { font-weight: 600; }
td.word, th.word { text-align: left; }
thead th { border-bottom: 2px solid var(--ink); vertical-align: bottom; }
thead .unit { display: block; font-weight: 400; color: var(--quiet); }
dl.facts { display: grid; grid-template-columns: minmax(9rem, max-content) 1fr; gap: .15rem 1rem; }
dl.facts dt { color: var(--quiet); }
dl.facts dd { margin: 0; overflow-wrap: anywhere; }
pre { white-space: pre-wrap; overflow-wrap: anywhere; background: var(--wash); padding: .8rem; font-size: .82rem; line-height: 1.4; }
code { overflow-wrap: anywhere; }
.skip { position: absolute; left: -99rem; }
.skip:focus { left: 1rem; top: .5rem; background: var(--paper); padding: .3rem .6rem; }
.player { display: flex; flex-wrap: wrap; gap: .8rem; align-items: center; margin: 1rem 0; }
.player input { flex: 1 1 14rem; min-width: 8rem; accent-color: var(--mark); }
.player button { font: inherit; padding: .3rem 1rem; color: var(--paper); background: var(--mark); border: 0; border-radius: .3rem; }
.player output { font-weight: 600; min-width: 12rem; }
@media (max-width: 40rem) { h1 { font-size: 1.4rem; } dl.facts { grid-template-columns: 1fr; } dl.facts dd { margin-bottom: .4rem; } }
@media print {
  @page { margin: 16mm 15mm 18mm; }
  body { font-size: 10pt; }
  main, header, footer { max-width: none; padding: 0; }
  header { padding-top: 0; }
  h1 { font-size: 18pt; } h2 { font-size: 13pt; margin-top: 14pt; } h3 { font-size: 11pt; }
  h2, h3, caption, thead { break-after: avoid; }
  figure, .verdict, tr, li { break-inside: avoid; }
  .keep { break-inside: avoid; }
  .fresh { break-before: page; }
  figure svg { max-height: 205mm; }
  figure.half svg { max-height: 118mm; }
  table { font-size: 8.5pt; } th, td { padding-right: .45rem; }
  .wide { overflow: visible; }
  pre { font-size: 7.5pt; }
  .skip, nav, .player { display: none; }
  .verdict, pre, thead { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
}
)";

}  // namespace

std::string page(const std::string& title, const std::string& body, const std::string& script) {
  const std::string code = script.empty() ? "" : "<script>\n" + script + "</script>\n";
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<meta name=\"color-scheme\" content=\"light\">\n<link rel=\"icon\" href=\"data:,\">\n"
      "<title>{}</title>\n<style>{}</style>\n</head>\n<body>\n{}{}</body>\n</html>\n",
      xml_text(title), style, body, code);
}

}  // namespace stillground::present
