import { clean } from '@edgebite/svg';

/** A column of a text table: its head, and whether its entries stand at the left or at the right. */
export interface Column<Row> {
  readonly head: string;
  readonly align: 'left' | 'right';
  readonly cell: (row: Row) => string;
}

const GAP = '  ';

/** A table in aligned columns, heads first, without idle spaces at the ends of lines. */
export function tableText<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const lines = [columns.map((c) => c.head), ...rows.map((row) => columns.map((c) => clean(c.cell(row))))];
  const widths = columns.map((_, i) => Math.max(...lines.map((cells) => (cells[i] as string).length)));
  return lines
    .map((cells) =>
      cells
        .map((cell, i) => {
          const width = widths[i] as number;
          return columns[i]?.align === 'right' ? cell.padStart(width) : cell.padEnd(width);
        })
        .join(GAP)
        .trimEnd(),
    )
    .join('\n');
}
