/** Black on white, no script, no fetched font; a printed page is one column of tables with the plan beside the first. */
export const sheetStyle = `
@page { size: auto; margin: 8mm 11mm }
* { box-sizing: border-box }
html { font-family: Arial, "Liberation Sans", "DejaVu Sans", sans-serif; font-size: 10.5pt; line-height: 1.22; color: #000; background: #fff }
body { margin: 0 auto; max-width: 188mm }
body.close { font-size: 10pt; line-height: 1.15 }
body.dense { font-size: 8.8pt; line-height: 1.03 }
body.dense th, body.dense td { padding-top: 0.1mm; padding-bottom: 0.1mm }
h1 { font-size: 1.5em; margin: 0 }
header { display: flex; justify-content: space-between; align-items: baseline; gap: 1em; border-bottom: 1.5pt solid #000; margin-bottom: 1.5mm }
header p { margin: 0; text-align: right }
main.drawn { display: grid; grid-template-columns: 1fr 62mm; gap: 4mm; align-items: start }
table { border-collapse: collapse; width: 100%; margin-bottom: 1mm }
caption { text-align: left; font-weight: bold; padding: 0.3mm 0 }
th, td { text-align: left; vertical-align: top; padding: 0.25mm 2mm 0.25mm 0; font-weight: normal; border-bottom: 0.4pt solid #999 }
thead th { border-bottom: 0.8pt solid #000 }
tbody th { font-weight: bold }
td { white-space: nowrap }
figure { margin: 0; text-align: center }
figure svg { width: 100%; height: auto; max-height: 92mm }
figcaption { font-size: 0.85em }
ul { margin: 0.5mm 0; padding-left: 1.2em }
ul.warnings { border: 1.2pt solid #000; padding: 1mm 2mm 1mm 6mm; font-weight: bold }
p.cautions { font-size: 0.9em }
h2 { font-size: 1em; margin: 0.5mm 0 }
ul.cables { columns: 2; list-style: none; padding: 0 }
footer { border-top: 0.8pt solid #000; margin-top: 1mm }
footer p { margin: 0.5mm 0 }
`;
