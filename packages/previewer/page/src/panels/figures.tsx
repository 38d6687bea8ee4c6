import { betweenText } from '@edgebite/core';
import { angleText, lengthText, numberText, roleText } from '@edgebite/svg';
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { isMarked } from '../state/marked.js';
import { panelResult } from '../state/panels.js';
import { dragging, unit } from '../state/store.js';
import type { Summary } from '../worker/messages.js';

/** The few figures that decide, large; then all others in tables. */
export function Figures() {
  if (panelResult.value === null) return null;
  return (
    <section class={`card figures${isMarked.value ? ' outdated' : ''}`} aria-labelledby="card-figures">
      <h2 id="card-figures">
        What is left{isMarked.value && !dragging.value && ' (from before the change)'}
      </h2>
      <All />
    </section>
  );
}

// By itself, so that it is not gone through for a sign on its card alone.
function All() {
  const summary = panelResult.value?.summary;
  if (summary === undefined) return null;
  return (
    <>
      <Large summary={summary} />
      <Tables summary={summary} />
    </>
  );
}

function Large({ summary }: { summary: Summary }) {
  const { units, webs, knifeEdges, pieces } = summary;
  const loose = pieces.filter(({ role }) => role === 'slug' || role === 'offcut').length;
  const web = webs[0];
  const edge = knifeEdges[0];
  return (
    <dl class="large">
      <Figure name="loose pieces" value={String(loose)} />
      <Figure
        name="thinnest web"
        value={web === undefined ? '—' : numberText(web.thickness, units)}
        unit={web === undefined ? `none under ${summary.limits.web} ${unit.value}` : unit.value}
        note={
          web === undefined
            ? undefined
            : `${lengthText(summary.limits.web - web.thickness, units)} under the limit, on ${labelOf(summary, web.piece)}`
        }
      />
      <Figure
        name="sharpest edge"
        value={edge === undefined ? '—' : angleText(edge.angle)}
        unit={edge === undefined ? `none under ${summary.limits.knifeEdge}°` : '°'}
        note={
          edge === undefined
            ? undefined
            : `${angleText(summary.limits.knifeEdge - edge.angle)}° under the limit, on ${labelOf(summary, edge.piece)}`
        }
      />
      <Figure name="removed" value={figure(summary.removedVolume)} unit={`${unit.value}³`} />
    </dl>
  );
}

function labelOf({ pieces }: Summary, id: string): string {
  return pieces.find((piece) => piece.id === id)?.label ?? id;
}

interface FigureProps {
  readonly name: string;
  readonly value: string;
  readonly unit?: string;
  readonly note?: string | undefined;
}

function Figure({ name, value, unit: of, note }: FigureProps) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <b>{value}</b>
        {of !== undefined && <span class="unit">{of === '°' ? of : ` ${of}`}</span>}
        {note !== undefined && <span class="note-of">{note}</span>}
      </dd>
    </div>
  );
}

/** Significant digits of areas, volumes and masses: what a scale or a caliper could confirm. */
const DIGITS = 5;

function figure(value: number): string {
  return String(Number(value.toPrecision(DIGITS)));
}

function Tables({ summary }: { summary: Summary }) {
  const { units, massUnit } = summary;
  const length = (value: number | null): string => (value === null ? '—' : numberText(value, units));
  const area = `area ${unit.value}²`;
  return (
    <>
      <Table
        name="Pieces"
        head={['piece', area, `volume ${unit.value}³`, ...(massUnit === null ? [] : [`mass ${massUnit}`])]}
        count={summary.pieces.length}
        rows={() =>
          summary.pieces.map((piece) => [
            `${piece.label} (${roleText(piece.role)})`,
            figure(piece.area),
            figure(piece.volume),
            ...(massUnit === null ? [] : [piece.mass === null ? '—' : figure(piece.mass)]),
          ])
        }
      />
      <Table
        name="Webs"
        head={[`thick ${unit.value}`, `long ${unit.value}`, 'between']}
        count={summary.webs.length}
        rows={() =>
          summary.webs.map((web) => [
            length(web.thickness),
            length(web.length),
            betweenText(web.between, summary.names),
          ])
        }
      />
      <Table
        name="Knife edges"
        head={['angle °', `feather ${unit.value}`, 'between']}
        count={summary.knifeEdges.length}
        rows={() =>
          summary.knifeEdges.map((edge) => [
            angleText(edge.angle),
            length(edge.feather),
            betweenText(edge.between, summary.names),
          ])
        }
      />
      <Table
        name="Floors"
        head={['under', `thick ${unit.value}`, area, 'holds']}
        count={summary.floors.length}
        rows={() =>
          summary.floors.map((floor) => [
            floor.under,
            length(floor.thickness),
            figure(floor.area),
            floor.holds ?? '—',
          ])
        }
      />
      <Table
        name="Cuts"
        head={['cut', 'outcome', `depth ${unit.value}`, `takes ${unit.value}³`]}
        count={summary.cuts.length}
        rows={() =>
          summary.cuts.map((cut) => [
            cut.id,
            cut.relation,
            cut.through ? 'through' : `${length(cut.depth)}${cut.from === 'bottom' ? ' from below' : ''}`,
            figure(cut.removedVolume),
          ])
        }
      />
    </>
  );
}

/** Rows of a table shown at most; the downloaded report has all. */
const MOST = 100;

interface TableProps {
  readonly name: string;
  readonly head: readonly string[];
  readonly count: number;
  /** The rows; asked for only while the table is open, so that closed ones cost nothing at every move. */
  readonly rows: () => readonly (readonly string[])[];
}

function Table({ name, head, count, rows }: TableProps) {
  const open = useSignal(false);
  if (count === 0) return null;
  return (
    <details
      class="table"
      onToggle={({ currentTarget }) => {
        open.value = currentTarget.open;
      }}
    >
      <summary>
        {name} <span class="count">{count}</span>
      </summary>
      {open.value && <Rows name={name} head={head} count={count} rows={rows()} />}
    </details>
  );
}

interface RowsProps extends Omit<TableProps, 'rows'> {
  readonly rows: readonly (readonly string[])[];
}

function Rows({ name, head, count, rows }: RowsProps) {
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it may scroll sideways, with keys too */}
      <section class="sideways" aria-label={name} tabIndex={0}>
        <table>
          <thead>
            <tr>
              {head.map((cell) => (
                <th key={cell} scope="col">
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, MOST).map((row, k) => (
              <tr key={k}>{row.map(cellOf)}</tr>
            ))}
          </tbody>
        </table>
        {count > MOST && <p class="hint">And {count - MOST} more; the report has them all.</p>}
      </section>
    </>
  );
}

function cellOf(cell: string, k: number): ComponentChildren {
  return k === 0 ? (
    <th key={k} scope="row">
      {cell}
    </th>
  ) : (
    <td key={k}>{cell}</td>
  );
}
