namespace Simfeel.Studies.Sheet.Writing;

/// <summary>
/// The look of the page: phone, desk and paper. No sign of XML's own may stand in it (a page is HTML and XML at once), so no
/// child selectors.
/// </summary>
internal static class PageStyle
{
    public const string Css = """

        :root { --ink: #1c2024; --soft: #565d66; --line: #d5d9de; --wash: #f4f6f8; --a: #0072B2; --b: #B84E00; }
        * { box-sizing: border-box; }
        html { -webkit-text-size-adjust: 100%; }
        body { margin: 0; background: #fff; color: var(--ink); font: 16px/1.5 "DejaVu Sans", Verdana, "Segoe UI", system-ui, sans-serif; }
        main { max-width: 1080px; margin: 0 auto; padding: 20px 16px 48px; }
        h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 8px; overflow-wrap: anywhere; }
        h2 { font-size: 1.2rem; line-height: 1.3; margin: 44px 0 12px; padding-top: 12px; border-top: 2px solid var(--ink); }
        h3 { font-size: 1rem; margin: 28px 0 8px; }
        p, ul { margin: 8px 0; max-width: 50em; overflow-wrap: anywhere; }
        ul { padding-left: 1.2em; }
        li { margin: 5px 0; }
        .kind { margin: 0 0 4px; color: var(--soft); font-size: .85rem; }
        .line, figcaption, caption, .quiet { color: var(--soft); }
        .line { max-width: 60em; }
        .warning { border-left: 4px solid var(--ink); padding: 4px 0 4px 12px; }
        .plates { display: grid; grid-template-columns: 1fr 1fr; gap: 16px; margin: 20px 0 0; }
        .plate { min-width: 0; padding: 12px 16px; background: var(--wash); border: 2px solid var(--a); }
        .plate.b { border: 2px dashed var(--b); }
        .plate h2 { margin: 0; padding: 0; border: 0; font-size: 1.2rem; overflow-wrap: anywhere; }
        .plate.a h2, th.a, td.a { color: var(--a); }
        .plate.b h2, th.b, td.b { color: var(--b); }
        .plate p { margin: 4px 0 10px; font-size: .9rem; }
        dl { margin: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(9em, 1fr)); gap: 6px 16px; }
        dt { color: var(--soft); font-size: .78rem; }
        dd { margin: 0; font-variant-numeric: tabular-nums; }
        #words li { font-size: 1.04rem; }
        .scroll { overflow-x: auto; margin: 12px 0; max-width: 100%; }
        .scroll:focus-visible { outline: 2px solid var(--a); }
        table { border-collapse: collapse; font-size: .86rem; font-variant-numeric: tabular-nums; }
        #numbers table { width: 100%; }
        caption { text-align: left; padding: 0 0 6px; font-size: .84rem; }
        caption span, tr.group span { display: inline-block; position: sticky; left: 0; max-width: calc(100vw - 34px); }
        th, td { padding: 4px 10px; text-align: right; vertical-align: top; border-bottom: 1px solid var(--line); font-weight: normal; }
        th:first-child, td:first-child { padding-left: 0; text-align: left; }
        [data-words] { text-align: left; }
        td { white-space: nowrap; }
        td[data-words=""] { white-space: normal; }
        td[data-words=""]:last-child { min-width: 14em; }
        th.a, th.b { overflow-wrap: anywhere; }
        thead th { vertical-align: bottom; font-weight: bold; border-bottom: 1px solid var(--ink); }
        tr.group th { padding-top: 14px; font-weight: bold; text-align: left; }
        tr.sum th, tr.sum td { font-weight: bold; border-top: 1px solid var(--ink); }
        td.felt { font-weight: bold; }
        td.undecided { font-style: italic; }
        .beside { display: grid; grid-template-columns: 1fr 1fr; gap: 8px 28px; align-items: start; margin: 8px 0; }
        .beside div { min-width: 0; }
        figure { margin: 8px 0; max-width: 560px; }
        figure svg { display: block; width: 100%; height: auto; }
        figcaption { font-size: .84rem; margin: 4px 0 0; }
        details { margin: 12px 0; }
        summary { cursor: pointer; font-weight: bold; padding: 4px 0; }
        @media screen and (max-width: 760px) {
          body { font-size: 15px; }
          .plates, .beside { grid-template-columns: 1fr; }
          h1 { font-size: 1.35rem; }
          th, td { padding: 4px 7px; }
          th[scope=row], thead th:first-child { position: sticky; left: 0; background: #fff; min-width: 8.6em; }
        }
        @page { size: A4; margin: 14mm 13mm; }
        @media print {
          html { font-size: 9.2pt; }
          body { font-size: 1rem; line-height: 1.4; }
          #words li { font-size: 1rem; }
          caption span, tr.group span { max-width: none; }
          h2 + p, h3 + p { break-after: avoid; }
          main { max-width: none; padding: 0; }
          h2 { margin-top: 22pt; break-after: avoid; }
          h3 { margin: 13pt 0 4pt; }
          h3, summary, caption { break-after: avoid; }
          .plates, .beside { grid-template-columns: 1fr 1fr; }
          .scroll { overflow: visible; }
          table { font-size: 8pt; }
          th, td { padding: 2.5pt 5pt; }
          thead { display: table-header-group; }
          tr, figure, .plate, .short, li, p { break-inside: avoid; }
          tr.group, thead { break-after: avoid; }
          tbody tr:first-child, p + .beside { break-before: avoid; }
          summary { list-style: none; }
        }

        """;
}
