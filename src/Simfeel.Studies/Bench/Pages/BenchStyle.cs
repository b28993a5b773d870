using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>The look of the bench's pages: that of a sheet, with boxes to write into, and nothing that needs colour.</summary>
internal static class BenchStyle
{
    public const string Css = PageStyle.Css + """

        .plates { display: block; margin: 8px 0 0; }
        figure { max-width: 700px; }
        td.blank { border: 1px solid var(--ink); min-width: 5.2em; height: 2.1em; }
        td.blank[data-words]:last-child { min-width: 5.2em; }
        #cautions ul { border: 2px solid var(--ink); padding: 8px 12px 8px 2em; max-width: none; }
        #head table, #weigh table, #exact table, #result table, #swing table, #balance table { width: 100%; }
        @media print {
          html { font-size: 8.9pt; }
          body { line-height: 1.3; }
          h1 { font-size: 1.5rem; }
          #then { break-inside: avoid; }
          h2 { margin: 11pt 0 5pt; padding-top: 6pt; }
          h3 { margin-top: 9pt; }
          p, ul, li { max-width: none; }
          ul { margin: 5pt 0; }
          li { margin: 2pt 0; }
          .scroll { margin: 7pt 0; }
          figure { max-width: 520px; margin: 5pt auto; }
          #swing, #balance { break-before: page; }
          #swing h2, #balance h2 { margin-top: 0; }
          td.blank { height: 2.05em; }
          th, td { padding: 2pt 5pt; }
          tr.group th { padding-top: 7pt; }
          .line, figcaption, caption, .quiet, .kind, dt { color: var(--ink); }
        }

        """;
}
