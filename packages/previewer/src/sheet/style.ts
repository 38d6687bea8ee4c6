/**
 * The look of the printed sheet: black on white, readable at arm's length. Sizes are in points and relative, so that
 * A4 and Letter both work; `size` is left to the printer. Digits of 16 pt are 4 mm high: 20 minutes of arc at 70 cm,
 * at arm's length (ISO 9241-303 recommends 20 to 22; from memory). Tables are a hair narrower than the page: borders
 * lie half outside of them, and a printer would cut that half off.
 */
export const STYLE = `
@page { margin: 12mm }
* { box-sizing: border-box }
body { margin: 0; color: #000; background: #fff; font: 11pt/1.35 Arial, Helvetica, "Liberation Sans", sans-serif; overflow-wrap: anywhere }
@media screen { body { max-width: 190mm; margin: 8mm auto; padding: 0 4mm } }
h1 { font-size: 17pt; margin: 0 0 1mm; line-height: 1.2 }
h2 { font-size: 15pt; margin: 0 0 1.5mm; padding: 1.5mm 2mm; border: 0.6mm solid #000; line-height: 1.2 }
h3 { font-size: 12pt; margin: 3mm 0 1mm; break-after: avoid }
p { margin: 0 0 1.5mm }
section { margin-top: 4mm }
section + section { break-before: page; margin-top: 0 }
table { width: calc(100% - 0.5mm); border-collapse: collapse; table-layout: fixed; margin: 3mm 0 }
thead { display: table-header-group }
tr { break-inside: avoid }
th, td { border: 0.25mm solid #000; padding: 0.8mm 1.5mm; vertical-align: baseline; text-align: left }
th { font-size: 10pt }
td.n { text-align: right; white-space: nowrap }
td.small { font-size: 7pt }
td.t { text-align: right; font-size: 16pt; font-weight: bold; white-space: nowrap; line-height: 1.15 }
td.t.long { font-size: 12pt }
td.t.longer { font-size: 8pt }
tr.tool { break-after: avoid }
tr.tool td { border-bottom-style: dashed; font-size: 12pt }
tr.tell { break-before: avoid }
tr.tell td { border-top-style: dashed; padding-left: 6mm }
tbody { break-inside: avoid; border-bottom: 0.5mm solid #000 }
td.c { font-weight: bold }
td.c span { font-weight: normal; font-size: 10pt }
figure { margin: 0; break-inside: avoid }
figure svg { display: block; width: 100%; height: auto }
figure.lies { float: right; width: 66mm; margin: 0 0 2mm 4mm; border: 0.25mm solid #000 }
figure.zeros { margin: 2mm 0 }
table, figure.zeros { clear: both }
ul, ol { margin: 0 0 1.5mm; padding-left: 6mm }
li { margin: 0 0 0.7mm; break-inside: avoid }
ul.watch li { font-size: 12pt; line-height: 1.25 }
p.standing { border-left: 0.6mm solid #000; padding-left: 2mm }
.done { width: 9mm }
.no { width: 11mm }
.off { width: 19mm }
.size { width: 21mm }
.depth { width: 22mm }
.target { width: 31mm }
`;

/**
 * SHA-256 of the style in Base64, for the policy of the sheet: kept here since a browser cannot hash without waiting.
 * After a change of the style a test fails and tells the new one.
 */
export const STYLE_HASH = 'JvWQmtjUG1zyOmqXE+DYTA8u1F6KTP8UzCEeseYuz1w=';
