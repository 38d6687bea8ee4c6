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

/** The reference has not answered in the time that it has. */
export class OutOfTime extends Error {}

/** The exact reference as a process that is asked one question after the other. */
export class ExactReference {
  private process: ChildProcessWithoutNullStreams;
  private answered: ((line: string | null) => void) | null = null;

  /**
   * @param program what `build.sh` has built
   * @param seconds how long it may think about one question
   */
  constructor(
    private readonly program: string,
    private readonly seconds: number,
  ) {
    this.process = this.start();
  }

  private start(): ChildProcessWithoutNullStreams {
    const process = spawn(this.program, [], { stdio: 'pipe' });
    // What one that is late still says is no answer to the next question.
    const answer = (line: string) => {
      if (process === this.process) this.answered?.(line);
    };
    createInterface(process.stdout).on('line', answer);
    process.on('exit', (code) => answer(`{"error":"the reference ended with ${code}"}`));
    return process;
  }

  /**
   * Asks for the exact result of an operation.
   * @param extra a result, to be told how far it is off; a length, to be told how many pieces may hang on it
   * @throws OutOfTime if the reference takes too long; Error if it cannot answer.
   */
  async ask(
    op: Operation,
    operands: readonly Region[],
    extra: { readonly got?: Region; readonly thin?: number } = {},
  ): Promise<ExactAnswer> {
    const { got, thin } = extra;
    const question = { op, operands: operands.map(shapeOf), thin, ...(got && { got: shapeOf(got).loops }) };
    const line = await this.lineFor(JSON.stringify(question));
    if (line === null) {
      const late = this.process;
      this.process = this.start();
      late.kill('SIGKILL');
      throw new OutOfTime(`exact reference: no answer in ${this.seconds} s`);
    }
    const answer = JSON.parse(line) as ExactAnswer & { error?: string };
    if (answer.error !== undefined) throw new Error(`exact reference: ${answer.error}`);
    return answer;
  }

  /** The answer to a question; null where it takes too long. */
  private async lineFor(question: string): Promise<string | null> {
    return new Promise((resolve) => {
      const answer = (line: string | null) => {
        clearTimeout(limit);
        this.answered = null;
        resolve(line);
      };
      const limit = setTimeout(() => answer(null), 1000 * this.seconds);
      this.answered = answer;
      this.process.stdin.write(`${question}\n`);
    });
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
