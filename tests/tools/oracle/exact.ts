import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Edge, Loop, Region } from '@edgebite/core';

/** The operations that the reference knows. */
export type Operation = 'union' | 'intersect' | 'subtract' | 'xor';

/** What the reference says of a case. */
export interface ExactAnswer {
  readonly area: number;
  readonly perimeter: number;
  readonly pieces: readonly { readonly area: number; readonly perimeter: number; readonly holes: number }[];
  /** Between how many pieces there may be if what is thinner than a given length may close or open. */
  readonly least: number;
  readonly most: number;
  /** Area in which a given result and the exact one differ; only where a result was given. */
  readonly off: number;
}

/** The exact reference as a process that is asked one question after the other. */
export class ExactReference {
  private readonly process: ChildProcessWithoutNullStreams;
  private readonly waiting: ((line: string) => void)[] = [];

  /** @param program what `build.sh` has built */
  constructor(program: string) {
    this.process = spawn(program, [], { stdio: 'pipe' });
    createInterface(this.process.stdout).on('line', (line) => this.waiting.shift()?.(line));
    this.process.on('exit', (code) => {
      for (const answer of this.waiting) answer(`{"error":"the reference ended with ${code}"}`);
      this.waiting.length = 0;
    });
  }

  /**
   * Asks for the exact result of an operation.
   * @param extra a result, to be told how far it is off; a length, to be told how many pieces may hang on it
   * @throws Error if the reference cannot answer.
   */
  async ask(
    op: Operation,
    operands: readonly Region[],
    extra: { readonly got?: Region; readonly thin?: number } = {},
  ): Promise<ExactAnswer> {
    const { got, thin } = extra;
    const question = { op, operands: operands.map(shapeOf), thin, ...(got && { got: shapeOf(got).loops }) };
    const line = await new Promise<string>((resolve) => {
      this.waiting.push(resolve);
      this.process.stdin.write(`${JSON.stringify(question)}\n`);
    });
    const answer = JSON.parse(line) as ExactAnswer & { error?: string };
    if (answer.error !== undefined) throw new Error(`exact reference: ${answer.error}`);
    return answer;
  }

  close(): void {
    this.process.stdin.end();
  }
}

/** A region as the reference reads it. */
export function shapeOf(region: Region): { readonly loops: readonly unknown[] } {
  return { loops: region.flatMap(({ outer, holes }) => [outer, ...holes]).map(loopOf) };
}

function loopOf(loop: Loop): unknown[] {
  return loop.map(edgeOf);
}

function edgeOf(edge: Edge): unknown {
  const ends = { a: [edge.a.x, edge.a.y], b: [edge.b.x, edge.b.y] };
  if (edge.kind === 'line') return { type: 'line', ...ends };
  return { type: 'arc', ...ends, c: [edge.center.x, edge.center.y], r: edge.radius, ccw: edge.ccw };
}
