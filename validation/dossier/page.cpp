#include <fmt/format.h>

#include <algorithm>

#include "tools/present/canvas.hpp"
#include "tools/present/palette.hpp"
#include "tools/present/svg.hpp"
#include "validation/dossier/dossier.hpp"

namespace stillground::validation {

namespace {

using present::xml_text;

constexpr std::size_t rows_shown = 14;  ///< longer tables open on demand

std::string style() {
  return fmt::format(
      "body{{font:17px/1.5 'Source Sans 3','Noto Sans','DejaVu Sans',Verdana,sans-serif;color:{0};max-width:960px;"
      "margin:2rem auto;padding:0 1rem;background:#fff}}"
      "h1,h2{{color:{0}}}h2{{border-bottom:2px solid {1};margin-top:3rem}}h3{{margin:2.5rem 0 .3rem}}"
      "table{{border-collapse:collapse;width:100%;font-size:15px;font-variant-numeric:tabular-nums}}"
      "th,td{{text-align:left;padding:.2rem .6rem;border-bottom:1px solid {1};vertical-align:top}}"
      "td.n,th.n{{text-align:right;white-space:nowrap}}.id{{color:{2};font-size:15px}}"
      "dl{{margin:.4rem 0 .8rem;display:grid;grid-template-columns:8rem 1fr;gap:.1rem "
      ".8rem}}dt{{color:{2}}}dd{{margin:0}}"
      ".missed{{color:{3};font-weight:bold}}.known{{color:{2}}}"
      ".bar{{display:inline-block;height:.7em;background:{0};vertical-align:middle}}"
      ".track{{display:inline-block;width:120px;border:1px solid {2};line-height:0;margin-right:.5rem}}"
      "svg{{max-width:100%;height:auto}}a{{color:{0}}}summary{{cursor:pointer;color:{0}}}"
      "@media print{{details>*{{display:block}}}}",
      present::ink, present::grid_ink, present::quiet_ink, present::limit_ink);
}

/// A sentence starts with a capital; claims are written without one, so that they can stand inside another.
std::string sentence(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return xml_text(text);
}

/// How much of what is allowed the largest miss takes, as a bar with its figure.
std::string share(const Verdict& v) {
  const double percent = 100 * v.worst;
  return fmt::format("<span class=\"track\"><span class=\"bar\" style=\"width:{:.0f}px\"></span></span>{:.0f}&nbsp;%",
                     std::min(120.0, 1.2 * percent), percent);
}

std::string outcome(const Verdict& v) {
  if (v.missed > 0) return fmt::format("<span class=\"missed\">{} missed</span>", v.missed);
  if (v.known > 0) return fmt::format("<span class=\"known\">held, {} known to miss</span>", v.known);
  return "held";
}

std::string overview(const Dossier& dossier, Kind of) {
  std::string text =
      "<table><thead><tr><th>claim</th><th>against</th><th class=\"n\">comparisons</th><th>outcome</th>"
      "<th>largest miss, of what is allowed</th></tr></thead><tbody>\n";
  for (const auto& [topic, entries] : dossier) {
    const auto is_of_kind = [&](const Entry& entry) { return kind(entry.heading.origin) == of; };
    if (std::none_of(entries.begin(), entries.end(), is_of_kind)) continue;
    text += fmt::format("<tr><th colspan=\"5\">{}</th></tr>\n", title(topic));
    for (const Entry& entry : entries) {
      if (!is_of_kind(entry)) continue;
      const Verdict v = verdict(entry);
      text += fmt::format(
          "<tr><td><a href=\"#{}\">{}</a></td><td>{}</td><td class=\"n\">{}</td><td>{}</td><td>{}</td></tr>\n",
          entry.heading.id, sentence(entry.heading.claim), mark(entry.heading.origin), v.rows, outcome(v), share(v));
    }
  }
  return text + "</tbody></table>\n";
}

std::string known_misses(const Dossier& dossier) {
  std::string rows;
  for (const auto& [topic, entries] : dossier) {
    for (const Entry& entry : entries) {
      for (const Row& row : entry.rows) {
        if (!row.known) continue;
        const RowText cells = row_text(row);
        rows += fmt::format(
            "<tr><td><a href=\"#{0}\">{0}</a></td><td>{1}</td><td class=\"n\">{2}</td><td class=\"n\">{3}</td>"
            "<td>{4}</td></tr>\n",
            entry.heading.id, xml_text(cells.at), cells.miss, cells.allowed, xml_text(row.known->reason));
      }
    }
  }
  if (rows.empty()) return "<p>None.</p>\n";
  return "<table><thead><tr><th>entry</th><th>at</th><th class=\"n\">miss</th><th class=\"n\">allowed</th>"
         "<th>reason</th></tr></thead><tbody>\n" +
         rows + "</tbody></table>\n";
}

std::string row_html(const Row& row) {
  const RowText cells = row_text(row);
  std::string note;
  if (row.known) note = fmt::format("<br><span class=\"known\">known: {}</span>", xml_text(row.known->reason));
  if (!row.held()) note += "<br><span class=\"missed\">missed</span>";
  return fmt::format(
      "<tr><td>{}{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td>"
      "</tr>\n",
      xml_text(cells.at), note, cells.reference, cells.ours, cells.miss, cells.allowed);
}

std::string table(const Entry& entry) {
  std::string text =
      "<table><thead><tr><th>at</th><th class=\"n\">reference</th><th class=\"n\">ours</th><th class=\"n\">miss</th>"
      "<th class=\"n\">allowed</th></tr></thead><tbody>\n";
  for (const Row& row : entry.rows) text += row_html(row);
  text += "</tbody></table>\n";
  if (entry.rows.size() <= rows_shown) return text;
  return fmt::format("<details><summary>all {} comparisons</summary>\n{}</details>\n", entry.rows.size(), text);
}

std::string section(const Entry& entry) {
  const Heading& h = entry.heading;
  std::string text = fmt::format(
      "<h3 id=\"{0}\">{1}</h3>\n<div class=\"id\">{0} · {2}</div>\n<dl><dt>against</dt><dd>{3}: {4}</dd>"
      "<dt>set-up</dt><dd>{5}</dd><dt>tolerance</dt><dd>{6}</dd><dt>largest miss</dt><dd>{7} of what is allowed</dd>"
      "</dl>\n",
      h.id, sentence(h.claim), outcome(verdict(entry)), mark(h.origin), xml_text(h.source), xml_text(h.setup),
      xml_text(h.tolerance), share(verdict(entry)));
  for (std::size_t i = 0; i < entry.plots.size(); ++i) {
    text += picture(entry.plots[i], fmt::format("{}-{}", h.id, i + 1));
  }
  return text + table(entry);
}

}  // namespace

std::string page(const Dossier& dossier) {
  std::string text = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" "
      "content=\"width=device-width\"><title>stillground: dossier</title><style>{}</style></head><body>\n"
      "<h1>stillground: the dossier</h1>\n<p>What the engine says of the physics. A known miss has its reason and a "
      "bound; the dossier fails if one gets worse, or if it is cured and still listed. Made by "
      "<code>validation/run</code>.</p>\n",
      style());
  for (const Kind kind : {Kind::outside, Kind::self_consistency}) {
    text += fmt::format("<h2>{}</h2>\n<p>{}. {}.</p>\n{}", heading(kind), explanation(kind),
                        in_words(sums(dossier, kind)), overview(dossier, kind));
  }
  text += fmt::format("<h2>Known misses</h2>\n{}", known_misses(dossier));
  for (const auto& [topic, entries] : dossier) {
    text += fmt::format("<h2>{}</h2>\n", title(topic));
    for (const Entry& entry : entries) text += section(entry);
  }
  return text + "</body></html>\n";
}

}  // namespace stillground::validation
