// Ten lines of library: what is left of a bar when a ring cut runs out through its end. Prints the pieces and the
// thin web. The tests run it; after `npm run build`, Node 22.18 or newer runs it as it is.
import { examine, parseJob } from '@edgebite/core';

const job = parseJob({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [70, 26] }, thickness: 10 },
  limits: { web: 1.5, knifeEdge: 30 },
  cuts: [{ id: 'journal', kind: 'annular', center: [68, 12.2], diameter: 22, wall: 4 }],
});
const report = examine(job);
for (const piece of report.pieces) console.log(piece.role, piece.area.toFixed(2), piece.freedBy ?? '');
for (const web of report.webs) console.log('web', web.thickness.toFixed(2), web.between.join(' to '));
