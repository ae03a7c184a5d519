package dev.waterjet.examples.plan;

/** Style of the sheet: light or dark as the reader's system is, down to the width of a phone, two pages in print. */
final class SheetStyle {

    static final String CSS = """
        :root { --ink: #1f2a33; --quiet: #5d6b76; --grid: #dde3e7; --paper: #fffffe; --ground: #f3f5f4;
          --plate: #cfd8dc; --danger: #a3161f; --warning: #8a5a00; --notice: #2b5c7e; --first: #0062a3;
          --second: #c24a00; --band: #bfd8e8; color-scheme: light dark; }
        @media (prefers-color-scheme: dark) {
          :root { --ink: #e4e9ec; --quiet: #9fadb7; --grid: #35414a; --paper: #1a2127; --ground: #12171b;
            --plate: #45525b; --danger: #ff8b8b; --warning: #e9b85c; --notice: #8fc3e6;
            --first: #5fb4ee; --second: #ff9a5c; --band: #2c4455; }
        }
        * { box-sizing: border-box; }
        body { margin: 0; background: var(--ground); color: var(--ink);
          font: 16px/1.5 system-ui, -apple-system, "Segoe UI", "DejaVu Sans", sans-serif; }
        main { max-width: 1040px; margin: 0 auto; padding: 32px 24px 64px; }
        h1 { font-size: 30px; line-height: 1.2; margin: 0; font-weight: 650; letter-spacing: -0.01em; }
        h2 { font-size: 17px; margin: 0 0 12px; font-weight: 650; }
        .lead { margin: 6px 0 24px; color: var(--quiet); }
        .figures { display: grid; grid-template-columns: repeat(auto-fit, minmax(140px, 1fr)); gap: 1px;
          background: var(--grid); border: 1px solid var(--grid); border-radius: 8px; overflow: hidden; margin: 0 0 24px; }
        .figures div { background: var(--paper); padding: 12px 16px; }
        .figures dt { color: var(--quiet); font-size: 13px; }
        .figures dd { margin: 2px 0 0; font-size: 18px; font-weight: 600; white-space: nowrap; font-variant-numeric: tabular-nums; }
        figure, section { background: var(--paper); border: 1px solid var(--grid); border-radius: 8px;
          padding: 18px 20px; margin: 0 0 24px; min-width: 0; }
        figure svg { display: block; width: 100%; height: auto; max-height: 70vh; }
        figcaption { color: var(--quiet); font-size: 14px; margin-top: 8px; }
        .pair { display: grid; grid-template-columns: 1fr 1fr; gap: 0 24px; align-items: stretch; }
        .legend { display: flex; align-items: center; gap: 12px; margin: 12px 0 0; font-size: 14px;
          font-variant-numeric: tabular-nums; }
        .scale { flex: 0 1 260px; height: 12px; border-radius: 6px; }
        table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
        th { text-align: left; font-weight: 400; }
        .facts th { color: var(--quiet); padding-right: 16px; width: 45%; }
        .facts th, .facts td, .list td, .list th { padding: 6px 8px 6px 0; border-top: 1px solid var(--grid);
          vertical-align: top; font-size: 15px; }
        .facts tr:first-child > * { border-top: 0; }
        .list thead th { border-top: 0; color: var(--quiet); font-size: 13px; }
        .list tbody th { min-width: 9em; overflow-wrap: anywhere; }
        .list .n { text-align: right; padding-right: 12px; white-space: nowrap; }
        .list .order { white-space: normal; min-width: 5em; }
        .scroll { overflow-x: auto; }
        .cautions { list-style: none; margin: 0; padding: 0; }
        .cautions li { padding: 8px 0 8px 14px; border-left: 4px solid var(--notice); margin-bottom: 10px; }
        .cautions strong { color: var(--notice); margin-right: 6px; }
        .cautions .warning { border-color: var(--warning); }
        .cautions .warning strong { color: var(--warning); }
        .cautions .danger { border-color: var(--danger); }
        .cautions .danger strong { color: var(--danger); }
        .evidence dt { font-weight: 600; }
        .evidence dd { margin: 2px 0 14px; color: var(--quiet); overflow-wrap: anywhere; }
        .evidence em { font-style: normal; color: var(--ink); border: 1px solid var(--grid); border-radius: 10px;
          padding: 1px 8px; font-size: 13px; margin-right: 4px; white-space: nowrap; }
        @media (max-width: 760px) {
          main { padding: 20px 12px 40px; }
          h1 { font-size: 24px; }
          .pair { grid-template-columns: 1fr; }
          figure, section { padding: 14px 14px; margin-bottom: 16px; }
          .figures dd { font-size: 17px; }
        }
        .sign { display: grid; grid-template-columns: repeat(4, 1fr); gap: 16px; margin: 0 0 24px; }
        .sign dt { color: var(--quiet); font-size: 13px; }
        .sign dd { margin: 0; height: 26px; border-bottom: 1px solid var(--ink); }
        .first { padding: 12px 16px; }
        .first .cautions li:last-child { margin-bottom: 0; }
        @page { size: auto; margin: 11mm 12mm; }
        @media print {
          :root { --ink: #000; --quiet: #3c4850; --grid: #b9c2c8; --paper: #fff; --plate: #cfd8dc; color-scheme: light; }
          body { background: none; font-size: 10pt; line-height: 1.25; }
          main { max-width: none; padding: 0; }
          .page + .page { break-before: page; }
          h1 { font-size: 18pt; }
          h2 { font-size: 11.5pt; margin: 0 0 3pt; }
          .lead { margin: 1pt 0 3pt; }
          figure, section { border: 0; border-top: 1px solid var(--grid); border-radius: 0; padding: 5pt 0 0;
            margin: 0 0 6pt; break-inside: avoid; }
          figure.whole svg { max-height: 82mm; }
          figure.screen { display: none; }
          .pair { grid-template-columns: 1fr 1fr; gap: 0 8mm; }
          .pair figure svg { max-height: 45mm; }
          .sign { margin: 0; }
          .figures { grid-template-columns: repeat(6, 1fr); margin: 0 0 5pt; }
          .figures div { padding: 4pt 6pt; }
          .figures dd { font-size: 12pt; }
          .facts th, .facts td, .list td, .list th { padding: 1pt 4pt 1pt 0; font-size: 9pt; }
          .page + .page .facts th, .page + .page .facts td { font-size: 7.5pt; padding: 0.6pt 3pt 0.6pt 0; }
          .page + .page .facts th { width: 30%; }
          .page + .page .cautions li { font-size: 7.5pt; margin-bottom: 1pt; }
          .evidence { columns: 2; column-gap: 8mm; margin: 0; }
          .cautions li { padding: 1pt 0 1pt 8pt; margin-bottom: 2pt; font-size: 8.5pt; }
          .evidence dd { margin: 0 0 2pt; font-size: 7pt; line-height: 1.2; }
          .evidence dt { font-size: 8pt; }
          .evidence em { font-size: 7pt; padding: 0 4pt; }
          .legend, figcaption { font-size: 9pt; margin-top: 2pt; }
          .scroll { overflow: visible; }
          .scale { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
        }
        """;

    private SheetStyle() {}
}
