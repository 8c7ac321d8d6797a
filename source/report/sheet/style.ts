/**
Black on white, no script, no fetched font. The sizes come from `pageFit` as --dial, --small and --plan: what is typed into boxes in
the largest letters, then the places with the plan beside them, then cables in two columns.
*/
export const sheetStyle = `
@page { size: auto; margin: 8mm 11mm }
@media print { body { display: flex; flex-direction: column; justify-content: space-between; min-height: calc(100vh - 3mm) } }
* { box-sizing: border-box }
html { font-family: Arial, "Liberation Sans", "DejaVu Sans", sans-serif; font-size: var(--small); line-height: 1.22; color: #000; background: #fff }
body { margin: 0 auto; max-width: 188mm }
h1 { font-size: 17pt; margin: 0 }
header { display: flex; justify-content: space-between; align-items: baseline; gap: 1em; border-bottom: 1.5pt solid #000; margin-bottom: 1.5mm }
header p { margin: 0; text-align: right }
main { font-size: var(--dial) }
main caption, main ul { font-size: max(var(--small), calc(var(--dial) * 0.75)) }
main thead th { font-size: calc(var(--dial) * 0.7) }
section.beside { display: grid; grid-template-columns: 1fr var(--plan); gap: 5mm; align-items: start }
table { border-collapse: collapse; width: 100%; margin-bottom: 1.5mm }
caption { text-align: left; font-weight: bold; padding: 0.3mm 0 }
th, td { text-align: left; vertical-align: top; padding: 0.06em 0.5em 0.06em 0; font-weight: normal; border-bottom: 0.4pt solid #999 }
thead th { border-bottom: 0.8pt solid #000; vertical-align: bottom }
tbody th { font-weight: bold }
td { white-space: nowrap }
figure { margin: 0; text-align: center }
figure svg { width: 100%; max-width: var(--plan); height: auto }
figure.curve { text-align: left } figure.curve svg { max-width: 100% }
figcaption { font-size: 0.85em }
ul { margin: 0.5mm 0; padding-left: 1.2em }
ul.warnings { border: 1.2pt solid #000; padding: 1mm 2mm 1mm 6mm; font-weight: bold }
ul.after { list-style: none; padding: 0 }
p.cautions { font-size: 0.9em }
h2 { font-size: 1em; margin: 0.5mm 0 }
ul.cables { columns: 2; column-gap: 6mm; list-style: none; padding: 0 }
ul.cables li { break-inside: avoid; padding: 0.06em 0; border-bottom: 0.4pt solid #999 }
footer { border-top: 0.8pt solid #000; margin-top: 1.5mm; font-size: max(var(--small), 8pt) }
footer p { margin: 0.5mm 0 }
`;
