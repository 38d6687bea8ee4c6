import { clean } from '@edgebite/svg';
import type { Sheet, SheetBlock, SheetPart, SheetStand, SheetStep } from './sheet.js';

/** A cell: a number, a text, or nothing. */
type Cell = number | string | null;

/** The columns of the file, in their order. */
export const CSV_COLUMNS = [
  'row',
  'block',
  'setup',
  'step',
  'stand',
  'cut',
  'kind',
  'pass',
  'passes',
  'role',
  'what',
  'lifted',
  'x',
  'y',
  'arc_x',
  'arc_y',
  'arc_radius',
  'arc_sense',
  'readout_unit',
  'off_x',
  'off_y',
  'diameter',
  'depth',
  'through',
  'from',
  'part_unit',
  'tool',
  'tool_kind',
  'tool_material',
  'turns_per_minute_from',
  'turns_per_minute_to',
  'feed_from',
  'feed_to',
  'feed_unit',
  'minutes_from',
  'minutes_to',
  'part',
  'z',
  'text',
] as const;

type Row = Partial<Record<(typeof CSV_COLUMNS)[number], Cell>>;

/**
 * A sheet as comma-separated values (RFC 4180: CRLF, quotes doubled, a head line, UTF-8). A row is one stand of a step, or of a step with a part of a batch,
 * or one line of text: `job`, `setup`, `zero x`, `zero y`, `first` and `step` (what to do before a step, and what to
 * know of it), `trial`, `part` of a batch, `comes off`, `measure`, `finish`, `watch`, `caution`. Numbers are written in full. A text that a spreadsheet would take for a
 * formula, or that starts with an apostrophe, has an apostrophe before it. Control characters are
 * replaced, since a terminal would obey them.
 */
export function sheetCsv(sheet: Sheet): string {
  const rows: Row[] = [
    { row: 'job', text: sheet.name },
    ...sheet.facts.map((text): Row => ({ row: 'job', text })),
    ...sheet.blocks.flatMap((block, k) => blockRows(sheet, block, k + 1)),
    { row: 'caution', text: sheet.standing },
  ];
  const lines = [
    CSV_COLUMNS.join(','),
    ...rows.map((row) => CSV_COLUMNS.map((column) => written(row[column] ?? null)).join(',')),
  ];
  return lines.map((line) => `${line}\r\n`).join('');
}

function blockRows(sheet: Sheet, block: SheetBlock, number: number): Row[] {
  const place: Row = { block: number, setup: block.setup };
  const said = (row: string, texts: readonly string[], at = place) =>
    texts.map((text): Row => ({ row, ...at, text }));
  return [
    ...said('setup', [block.title, block.lies]),
    ...block.zero.flatMap(({ axis, result, links }) => said(`zero ${axis}`, [result, ...links])),
    ...block.steps.flatMap((step) => {
      const at: Row = { ...place, step: step.number, cut: step.cut };
      return [
        ...said('first', step.before, at),
        ...step.stands.map(
          (stand, k): Row => ({
            row: 'stand',
            ...at,
            stand: k + 1,
            ...stepCells(sheet, block, step),
            ...standCells(stand, block),
          }),
        ),
        ...said('step', step.tells, at),
      ];
    }),
    ...block.trials.flatMap(({ cut, lines, heads, rows }) => [
      ...said('trial', lines, { ...place, cut }),
      ...said(
        'trial',
        rows.map((row) => row.map((cell, k) => `${heads[k]} ${cell}`).join('; ')),
        { ...place, cut },
      ),
    ]),
    ...block.parts.flatMap((part) => partRows(part, block, place)),
    ...said('comes off', block.falls),
    ...said('measure', block.measure),
    ...said('finish', block.finish),
    ...said('watch', block.watch),
  ];
}

/** A part of a batch: a line on its lengths, and its stands. */
function partRows({ name, measured, rows }: SheetPart, block: SheetBlock, place: Row): Row[] {
  return [
    { row: 'part', ...place, part: name, text: measured },
    ...rows.map(
      ({ step, stand, cut, what, target, depth }): Row => ({
        row: 'part stand',
        ...place,
        step,
        stand: stand ?? 1,
        cut,
        what,
        ...placeCells(target, block),
        readout_unit: block.units,
        part: name,
        z: block.isLost === true ? null : depth,
      }),
    ),
  ];
}

/** A place to go to; none where the zero is lost. */
function placeCells(target: SheetStand['target'], { isLost = false }: SheetBlock): Row {
  return { x: isLost ? null : target[0], y: isLost ? null : target[1] };
}

function standCells({ what, lifted, target, arc, off }: SheetStand, block: SheetBlock): Row {
  return {
    what,
    lifted: lifted ? 'yes' : 'no',
    ...placeCells(target, block),
    arc_x: block.isLost === true ? null : (arc?.center[0] ?? null),
    arc_y: block.isLost === true ? null : (arc?.center[1] ?? null),
    arc_radius: arc?.radius ?? null,
    arc_sense: arc?.sense ?? null,
    off_x: off?.[0] ?? null,
    off_y: off?.[1] ?? null,
  };
}

function stepCells(sheet: Sheet, block: SheetBlock, step: SheetStep): Row {
  const { pass, running } = step;
  return {
    kind: step.kind,
    pass: pass?.number ?? null,
    passes: pass?.count ?? null,
    role: pass?.role ?? null,
    readout_unit: block.units,
    diameter: step.diameter,
    depth: step.depth,
    through: step.through ? 'yes' : 'no',
    from: step.from,
    part_unit: sheet.units,
    tool: running?.tool ?? null,
    tool_kind: running?.kind ?? null,
    tool_material: running?.toolMaterial ?? null,
    turns_per_minute_from: running?.set?.[0] ?? null,
    turns_per_minute_to: running?.set?.[1] ?? null,
    feed_from: running?.feed?.[0] ?? null,
    feed_to: running?.feed?.[1] ?? null,
    feed_unit: running?.feedUnit ?? null,
    minutes_from: step.minutes?.[0] ?? null,
    minutes_to: step.minutes?.[1] ?? null,
  };
}

/**
 * What a spreadsheet may take for the start of a formula (OWASP, CSV injection), after spaces too. An apostrophe as
 * well, so that taking one away gives every text back.
 */
const GUARDED = /^(?:\s*[=+\-@＝＋－＠]|[\t\r\n'])/;

/** What RFC 4180 wants quotes for; and spaces at the ends, which some readers trim. */
const QUOTED = /[",\r\n]|^\s|\s$/;

function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = clean(cell);
  const safe = GUARDED.test(text) ? `'${text}` : text;
  return QUOTED.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
